/// <reference lib="dom" />

/** Something that can be heard or felt, where the device allows it. What it means always stands on the page as well. */
export interface Alarm {
  /** To be called while a button is pressed: browsers stay silent otherwise. */
  readonly wake: () => void;
  readonly ring: () => void;
}

const BEEPS = 3;

/** Three short tones and a buzz. */
export function startAlarm(): Alarm {
  let sound: AudioContext | null = null;
  return {
    wake: () => {
      sound ??= typeof AudioContext === 'undefined' ? null : new AudioContext();
      void sound?.resume();
    },
    ring: () => {
      if ('vibrate' in navigator) navigator.vibrate([300, 150, 300, 150, 300]);
      if (sound === null) return;
      for (let beep = 0; beep < BEEPS; beep += 1) {
        const tone = sound.createOscillator();
        tone.frequency.value = 880;
        tone.connect(sound.destination);
        tone.start(sound.currentTime + beep * 0.45);
        tone.stop(sound.currentTime + beep * 0.45 + 0.25);
      }
    },
  };
}
