import { longestWords } from "../session/index.ts";
import type { Actions, Texts, View } from "./actions.ts";
import { titleOf } from "./findings.ts";
import type { Live, Suggested } from "./live.ts";
import { machineTurn } from "./machine.ts";

/** A fact in words. */
export type SaidFact = { turn: string; answer: string; title: string; text: string };

/** A suggestion as it can be shown and taken at one turn. */
export type Offer =
  | { kind: "point"; answer: string; text: string }
  | { kind: "answer"; turn: string; answer: string; text: string; why: string }
  | { kind: "check"; check: string; name: string; why: string }
  | { kind: "ending"; ending: "fixed" | "professional"; why: string }
  | { kind: "model"; model: string; why: string }
  | { kind: "told"; facts: SaidFact[]; words: string };

/**
 * What of a suggestion a householder can take at what is on screen; null for nothing. An answer is offered for a plain
 * question that is open and has it: never at a gate, an instrument or a wait, for these are the householder's alone. After
 * a stop nothing is offered.
 */
export function offerOf(suggested: Suggested, view: View, texts: Texts): Offer | null {
  const { turn } = view;
  if (!turn || turn.turn === machineTurn || turn.ending?.outcome === "stopped") return null;
  switch (suggested.kind) {
    case "point": {
      const found = answerIn(suggested, view);
      return found && { kind: "point", answer: found.id, text: found.text };
    }
    case "propose": {
      const { why } = suggested;
      if ("turn" in suggested) {
        const found = turn.kind === "choice" ? answerIn(suggested, view) : null;
        return found && { kind: "answer", turn: turn.turn, answer: found.id, text: found.text, why };
      }
      if ("ending" in suggested) {
        const way = suggested.ending === "fixed" ? "ice" : "help";
        return view.ways.includes(way) ? { kind: "ending", ending: suggested.ending, why } : null;
      }
      const { check } = suggested;
      const name = isId(check) ? texts(`checks.${check}.name`) : "";
      const isPast = [turn, ...view.lines].some((one) => one.turn.startsWith(`${check}.`));
      return !name || isPast || turn.ending ? null : { kind: "check", check, name, why };
    }
    case "correct":
      return { kind: "model", model: suggested.model, why: suggested.why };
    case "told": {
      const facts = suggested.facts.flatMap((fact) => {
        const isNamed = [...fact.turn.split("."), fact.answer].every(isId);
        const text = isNamed ? texts(`checks.${fact.turn}.answers.${fact.answer}`) : "";
        const isKnown = view.lines.some((line) => line.turn === fact.turn);
        return text && !isKnown ? { ...fact, title: titleOf(fact.turn, texts), text } : [];
      });
      return facts[0] ? { kind: "told", facts, words: suggested.words } : null;
    }
  }
}

/** Ids of flows/, and no name that every object has. */
const isId = (name: string) => /^[a-z\d-]+$/.test(name) && !(name in {});

/** An answer of the turn that is open, as it stands in its row. What a gate is confirmed with stands in none. */
function answerIn({ turn, answer }: { turn: string; answer: string }, { turn: open }: View) {
  if (open?.turn !== turn || open.kind === "gate") return null;
  return open.answers.find(({ id }) => id === answer) ?? null;
}

/**
 * Does for a householder what they have tapped: one action of theirs, if it can still be taken. What an agent has heard
 * and is a danger counts as reported.
 * @returns false where nothing was done
 */
export function takeOffer(
  suggested: Suggested,
  view: View,
  texts: Texts,
  actions: Pick<Actions, "answer" | "askForHelp" | "reportIce" | "tell" | "giveModel" | "reportDanger">,
  live: Pick<Live, "lookNext">,
): boolean {
  const offer = offerOf(suggested, view, texts);
  switch (offer?.kind) {
    case "answer":
      actions.answer(offer.turn, offer.answer);
      return true;
    case "check":
      live.lookNext(offer.check);
      return true;
    case "ending":
      if (offer.ending === "fixed") actions.reportIce();
      else actions.askForHelp();
      return true;
    case "model":
      if (view.turn?.kind === "model") actions.giveModel(view.turn.turn, offer.model, offer.model);
      else actions.tell({ words: "", facts: [], model: offer.model });
      return true;
    case "told": {
      const danger = view.dangers.find(({ id }) => offer.facts.some(({ answer }) => answer === id));
      const facts = offer.facts.map(({ turn, answer }) => ({ turn, answer }));
      const words = (offer.words || offer.facts.map(({ text }) => text).join(", ")).slice(0, longestWords);
      if (danger) actions.reportDanger(danger.id);
      else actions.tell({ words, facts, heard: true });
      return true;
    }
    default:
      return false;
  }
}
