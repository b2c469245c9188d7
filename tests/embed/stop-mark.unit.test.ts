import { describe, expect, test } from "vitest";
import { createStops, stopKey } from "../../src/embed/stop-mark.ts";
import { at } from "../session/drive.ts";
import { SharedStorage } from "./two-tabs.ts";

const gas = { danger: "gas", at: at(1) };

function open(shared = new SharedStorage(), own = new SharedStorage()) {
  return { shared, own, stops: createStops([() => shared.place, () => own.place]) };
}

describe("the mark of a stop", () => {
  test("is read by every tab, stays the first that was reported, and goes when it is cleared", () => {
    const { shared, stops } = open();
    stops.keepStop("a", gas);
    stops.keepStop("a", { danger: "shock", at: at(2) });
    const other = open(shared).stops;
    expect(other.readStop("a")).toEqual(gas);
    expect(other.readStop("b")).toBeNull();
    other.clearStop("a");
    expect(stops.readStop("a")).toBeNull();
  });

  test("outlives a reload where the shared storage is full, and moves there once it has room", () => {
    const { shared, own, stops } = open();
    shared.state = "full";
    stops.keepStop("a", gas);
    expect(stops.readStop("a")).toEqual(gas);
    const reloaded = open(shared, own).stops;
    expect(reloaded.readStop("a")).toEqual(gas);
    shared.state = "open";
    reloaded.keepStop("a", gas);
    expect(shared.kept.has(stopKey("a"))).toBe(true);
    open(shared).stops.clearStop("a");
    expect(reloaded.readStop("a")).toBeNull();
  });

  test("gets room in a full storage from what was set aside, so that every tab stops", () => {
    const { shared, stops } = open();
    shared.kept.set("fridgeside:a:aside", "[1]");
    const { setItem } = shared.place;
    const full = {
      ...shared.place,
      getItem: (key: string) => shared.place.getItem(key),
      removeItem: (key: string) => shared.place.removeItem(key),
      setItem: (key: string, text: string) => {
        if (shared.kept.has("fridgeside:a:aside")) throw new Error("full");
        setItem.call(shared.place, key, text);
      },
    } as Storage;
    createStops([() => full]).keepStop("a", gas);
    expect(stops.readStop("a")).toEqual(gas);
  });

  test("lasts as long as the page where all storage is denied", () => {
    const { shared, own, stops } = open();
    shared.state = "denied";
    own.state = "denied";
    stops.keepStop("a", gas);
    expect(stops.readStop("a")).toEqual(gas);
    stops.clearStop("a");
    expect(stops.readStop("a")).toBeNull();
  });

  test.each(["", "{oops", "7", "null", '{"danger":7}', JSON.stringify({ ...gas, danger: "g".repeat(99) })])(
    "still stops where %j lies in its place",
    (spoilt) => {
      const { shared, stops } = open();
      shared.kept.set(stopKey("a"), spoilt);
      expect(stops.readStop("a")?.danger).toBe("not-sure");
    },
  );
});
