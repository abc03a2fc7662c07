"use client";

/** When each timer was started on this device: kept by the browser, so that a reload does not end it. */
const listeners = new Set<() => void>();
/** For a browser that keeps nothing: as long as the page is open. */
const begun = new Map<string, number>();

export const timerPlace = (batch: string, step: number): string => `bench timer ${batch} ${String(step)}`;

export function onTimers(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

/** @returns milliseconds since 1970, or null where it does not run */
export function beganAt(place: string): number | null {
  try {
    const at = Number(localStorage.getItem(place));
    if (at > 0) return at;
  } catch {
    // Asked of the page itself below.
  }
  return begun.get(place) ?? null;
}

/** @param at  null ends it */
export function setTimer(place: string, at: number | null): void {
  if (at === null) begun.delete(place);
  else begun.set(place, at);
  try {
    if (at === null) localStorage.removeItem(place);
    else localStorage.setItem(place, String(at));
  } catch {
    // It runs as long as the page is open.
  }
  for (const changed of listeners) changed();
}

let audio: AudioContext | null = null;

/** A browser gives sound only to who has touched the page: asked for when a timer is started. */
export function openSound(): void {
  try {
    audio ??= new AudioContext();
  } catch {
    // A browser without sound: the words say it too.
  }
}

/** Three short tones, made by the browser itself. */
export function sound(): void {
  openSound();
  if (audio === null) return;
  for (const at of [0, 0.4, 0.8]) {
    const tone = audio.createOscillator();
    tone.frequency.value = 880;
    tone.connect(audio.destination);
    tone.start(audio.currentTime + at);
    tone.stop(audio.currentTime + at + 0.2);
  }
}
