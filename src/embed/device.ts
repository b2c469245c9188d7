import { whenIdle } from "../loading/pace/index.ts";

/** Keeps the screen awake while a test runs; a phone that cannot do so simply dims as it always does. */
export async function keepAwake(): Promise<() => void> {
  try {
    const lock = await navigator.wakeLock.request("screen");
    return () => void lock.release().catch(() => {});
  } catch {
    return () => {};
  }
}

/** Made once: a slow phone takes a tenth of a second for it. */
let sound: AudioContext | null = null;

/** A beep and a buzz: the person's eyes are on the jug. Harmless where the device has neither; `soon` makes it ready. */
export function signal(kind: "soon" | "tick" | "end"): void {
  if (kind === "soon") whenIdle(makeSound);
  else give(kind);
}

function makeSound(): void {
  if (sound) return;
  try {
    sound = new AudioContext();
    // Nothing runs, and uses power, until there is something to hear.
    void sound.suspend().catch(() => {});
  } catch {
    // Without it the device only buzzes.
  }
}

function give(kind: "tick" | "end"): void {
  try {
    navigator.vibrate?.(kind === "end" ? [200, 100, 200] : 40);
    makeSound();
    if (!sound) return;
    void sound.resume().catch(() => {});
    const tone = sound.createOscillator();
    const volume = sound.createGain();
    volume.gain.value = 0.2;
    tone.frequency.value = kind === "end" ? 880 : 440;
    tone.connect(volume).connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + (kind === "end" ? 0.5 : 0.06));
  } catch {
    // No sound: the screen shows the end as well.
  }
}
