import { Component } from "preact";
import type { Texts, Turn } from "../../../turn/index.ts";

type Props = { turn: Turn; texts: Texts };
type State = { voice: SpeechSynthesisVoice | null; isSpeaking: boolean };

/**
 * Speaks the turn, by a voice that the device has itself: other voices would send the text away. Without one in the
 * reader's language there is no button.
 */
export class ReadAloud extends Component<Props, State> {
  override state: State = { voice: null, isSpeaking: false };

  readonly #look = () => this.setState({ voice: voiceFor(this.props.texts("ui.locale")) });

  override componentDidMount(): void {
    this.#look();
    // Most browsers know their voices only a while after they were asked.
    window.speechSynthesis?.addEventListener?.("voiceschanged", this.#look);
  }

  override componentDidUpdate({ turn }: Props): void {
    if (turn.turn !== this.props.turn.turn) this.#hush();
  }

  override componentWillUnmount(): void {
    this.#hush();
    window.speechSynthesis?.removeEventListener?.("voiceschanged", this.#look);
  }

  #hush(): void {
    if (!this.state.isSpeaking) return;
    speechSynthesis.cancel();
    this.setState({ isSpeaking: false });
  }

  #speak(): void {
    const { turn, texts } = this.props;
    const spoken = new SpeechSynthesisUtterance(wordsOf(turn).join("\n"));
    spoken.voice = this.state.voice;
    spoken.lang = texts("ui.locale");
    const end = () => this.setState({ isSpeaking: false });
    spoken.addEventListener("end", end);
    spoken.addEventListener("error", end);
    // What another page has left unsaid would come first.
    speechSynthesis.cancel();
    speechSynthesis.speak(spoken);
    this.setState({ isSpeaking: true });
  }

  override render({ texts }: Props, { voice, isSpeaking }: State) {
    if (!voice) return null;
    return (
      <button
        type="button"
        class="aloud"
        aria-pressed={isSpeaking}
        aria-label={texts("composer.read")}
        onClick={() => (isSpeaking ? this.#hush() : this.#speak())}
      >
        <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
          <path fill="currentColor" d="M3 9v6h4l5 5V4L7 9z" />
          <path d="M15 8.5q3 3.5 0 7M18 5.5q6 6.5 0 13" fill="none" stroke="currentColor" stroke-width="2" />
        </svg>
      </button>
    );
  }
}

/** The device's own voice in a language, of the same country where it has one. */
function voiceFor(locale: string): SpeechSynthesisVoice | null {
  const [language] = locale.split("-");
  const own = (window.speechSynthesis?.getVoices() ?? []).filter(
    ({ localService, lang }) => localService && lang.split(/[-_]/)[0] === language,
  );
  return own.find(({ lang }) => lang.replace("_", "-") === locale) ?? own[0] ?? null;
}

/** In the order in which it is read; dangers first of what is to be done. */
function wordsOf({ heading, hazards, gate, body, note, ending, answers }: Turn): string[] {
  return [
    heading,
    ...hazards.map(({ text }) => text),
    ...body,
    note,
    ...(ending?.back ?? []),
    ...(gate?.items.map(({ text }) => text) ?? []),
    ...answers.flatMap(({ role, text }) => (role === "own" ? text : [])),
  ].filter(Boolean);
}
