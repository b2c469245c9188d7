/** Says a sentence to the page's developer. `about`: what counts as the same complaint; the sentence itself if left out. */
export type Complain = (sentence: string, about?: string) => void;

/** A feed can be wrong in a thousand places; nobody reads so far down (judgement). */
const MOST = 100;

/** A console in which each complaint is said once, however often an attribute changes or a code is looked up. */
export function createComplaints(say: (sentence: string) => void): Complain {
  const said = new Set<string>();
  return (sentence, about = sentence) => {
    if (said.has(about) || said.size >= MOST) return;
    said.add(about);
    say(`<fridgeside-panel>: ${sentence}`);
  };
}

/** The page's own console, once for each complaint in the life of the page. */
export const complain = createComplaints((sentence) => console.warn(sentence));
