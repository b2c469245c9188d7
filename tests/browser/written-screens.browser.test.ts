import type { Locator } from "@playwright/test";
import { expect, test } from "./panel-test.ts";
import { readScreen } from "./read-screen.ts";

/*
 * Screens as a person wrote them down: no text, answer or verdict here is asked of the code that made the screen. Whoever
 * changes what these turns say reads the screen once, and changes it here too.
 */
type Screen = { says: string[]; buttons: string[] };

/** In the bar at the top, on every screen. */
const top = ["Danger?", "More"];

const noIce = { "opening.symptom": "no-ice", "opening.supply": "plumbed" };

/** All of `says` in sight, in this order, and just these buttons, but for those of earlier answers and the one that sends typed words, which has a sign. */
async function shows(host: Locator, { says, buttons }: Screen): Promise<void> {
  await expect(async () => {
    const screen = await host.evaluate(readScreen, "");
    const words = screen.shown.replace(/\s+/g, " ");
    let at = 0;
    for (const each of says) {
      const place = words.indexOf(each, at);
      expect(place, `"${each}" in ${words.slice(at)}`).toBeGreaterThanOrEqual(0);
      at = place + each.length;
    }
    const named = screen.buttons.filter((each) => !/^\d+ answers? so far$|\n|^$/.test(each));
    expect(named).toEqual(buttons);
  }).toPass({ timeout: 10_000 });
}

test("what greets asks for the complaint, and names the way out of a danger", async ({ panel }) => {
  await panel.open();
  await shows(panel.host, {
    says: [
      "Hello. What's going wrong?",
      "Look in the ice bin first, if it's about ice.",
      "Is anything dangerous? Press Danger at the top first. If more than one fits, choose the worst.",
    ],
    buttons: [
      ...top,
      "It makes no new ice",
      "It makes too little ice",
      "There's ice, but none comes out",
      "The ice looks or tastes wrong",
      "The fridge or freezer is too warm",
      "Water where it shouldn't be",
      "It's new, moved or has a new filter",
      "Something else, or I'm not sure",
    ],
  });
});

test("the next question is about danger, and names each", async ({ panel }) => {
  await panel.open();
  await panel.says("leaking");
  await shows(panel.host, {
    says: [
      "Is anything dangerous right now?",
      "Look, listen and smell before you touch anything.",
      "Clicks and gurgles are normal.",
    ],
    buttons: [
      ...top,
      "Nothing dangerous",
      "A burning smell or smoke",
      "Sparks, or a hot or buzzing plug",
      "Water near a socket or plug",
      "Gas smell, or an oily patch",
      "A shock or a tingle from the machine",
      "Only a hiss",
      "I'm not sure",
    ],
  });
});

test("a gate names each thing to make sure of, under what can happen", async ({ panel }) => {
  await panel.openWhere("stop-tap.gate-water-supply");
  await shows(panel.host, {
    says: [
      "Is the water off and the floor ready?",
      "CAUTION",
      "Escaping water can flood the room: close the small tap first.",
      "A wet floor makes you slip: lay a towel and wipe up at once.",
      "I can reach the small tap on the fridge's own pipe.",
      "I've closed it by hand, and I remember how I found it.",
      "I have a towel and a bucket ready.",
      "I know who to call if water keeps coming.",
      "Follow your local plumbing and electrical codes and regulations.",
    ],
    buttons: [...top, "I have done all of this", "I can't confirm all of this"],
  });
});

test("a freezer at 5 degrees below nought is too warm", async ({ panel }) => {
  await panel.openWhere("freezer-temperature.read");
  await panel.host.getByText("The freezer's display", { exact: true }).tap();
  await panel.host.getByRole("textbox", { name: "Temperature" }).fill("-5");
  await panel.button("Show what it means").tap();
  await shows(panel.host, {
    says: [
      "How cold is the freezer?",
      "Put a thermometer between two frozen packs.",
      "Shut the door and leave it for 5 hours, or overnight.",
      "A freezer should be at −18 °C, and colder than −15 °C for ice.",
      "Too warm to make ice well",
      "−5 °C, give or take 2°. It should be −15 °C or colder.",
      "Water in the tray takes 3.6 times as long to freeze as at −18 °C.",
    ],
    buttons: [...top, "Use this", "I'm not sure", "I can't do this"],
  });
});

test("a wait that begins at nine is over at nine next day", async ({ panel }) => {
  await panel.openWhere("ice-maker-switch.switch-on", noIce);
  await panel.answer("switched-on");
  await panel.goTo("wait-for-ice.wait");
  await shows(panel.host, {
    says: [
      "Is there ice yet?",
      "Wait up to 24 hours for the first ice.",
      "Open the door as little as you can.",
      "Throw the first ice away.",
      "24 hours left",
      "Ready on Tuesday 09:00",
      "The tray and the air around it get cold.",
    ],
    buttons: [...top, "Put it in my calendar", "Yes, there's ice", "Keep checking instead"],
  });
});

test("a cracked bin is a new bin for the code on the plate", async ({ panel }) => {
  await panel.openWhere("part.model", noIce, undefined, "bin-cracked");
  await panel.host.locator(".turn").getByRole("textbox").fill("BLQ254NH/A0");
  await panel.button("Find my model").tap();
  await panel.button("This is mine: BLQ254NH/A0").tap();
  // Number, price and stock as the demo shop's feed has them: 4369 pence, "few", "original".
  await shows(panel.host, {
    says: [
      "A part is needed",
      "The ice bin is broken and doesn't sit right",
      "You need a new ice bin.",
      "Ice bin: It's cracked or broken",
      "Ruled out: the controls.",
      "What proves it is marked below.",
      "Fits your model: BLQ254NH/A0",
      "Check the number against your rating plate before you order.",
      "Ice bin for Brindlequay BLQ2 series",
      "LLS-10060",
      "£43.69",
      "Only a few left",
      "About 5 minutes to fit",
      "Meanwhile, freeze drinking water in an ice tray.",
      "Is it worth it?",
      "Why this part",
    ],
    buttons: [...top, "Add to basket", "The new part's in. It still happens", "Copy this summary", "Print"],
  });
});

test("where no cause was found a person takes over, with all that was seen", async ({ panel }) => {
  await panel.openWhere("professional.end", { "opening.symptom": "no-ice" });
  await shows(panel.host, {
    says: [
      "A job for a professional",
      "Time to ask an expert",
      "We're not sure of the cause yet, so we name no part to buy.",
      "An appliance engineer: Give them the model number and the checks below.",
      "Ask Larder Lane Spares",
      "What you found",
      "What happens It makes no new ice",
      "Water supply Through a tube at the back",
      "Lately Nothing that I know of",
    ],
    buttons: [...top, "Get a person to help", "Copy this summary", "Print"],
  });
});
