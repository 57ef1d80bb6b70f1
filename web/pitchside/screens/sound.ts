// Sounds of a drill, each set on the audio clock itself from one fixed point, some time ahead: a busy or sleeping page
// can make none of them late, and no error adds up.
import type { Sound } from "../evening/course.ts";

const kAheadSeconds = 90; // pages in the background may be woken once a minute only
const kRefillMilliseconds = 5000;

const kTone: Record<Sound["sound"], { hertz: number; seconds: number; loud: number }> = {
  begin: { hertz: 880, seconds: 0.35, loud: 0.5 },
  end: { hertz: 440, seconds: 0.5, loud: 0.5 },
  beat: { hertz: 1320, seconds: 0.06, loud: 0.4 },
  soon: { hertz: 660, seconds: 0.1, loud: 0.3 },
};

export interface SetSound {
  stop(): void;
}

// One tone that begins at that second of the context's clock.
export function setSound(context: BaseAudioContext, sound: Sound["sound"], at: number): SetSound {
  const { hertz, seconds, loud } = kTone[sound];
  const tone = context.createOscillator();
  const swell = context.createGain();
  tone.frequency.value = hertz;
  swell.gain.setValueAtTime(loud, at);
  swell.gain.setValueAtTime(loud, at + seconds - 0.02);
  swell.gain.linearRampToValueAtTime(0, at + seconds);
  tone.connect(swell).connect(context.destination);
  tone.start(at);
  tone.stop(at + seconds);
  return {
    stop() {
      tone.disconnect();
      swell.disconnect();
    },
  };
}

export interface Metronome {
  // Sounds from here on, the drill's clock being at `seconds` now.
  play(sounds: Sound[], seconds: number): void;
  silence(): void;
}

export function openMetronome(): Metronome {
  let context: AudioContext | undefined;
  let set: SetSound[] = [];
  let refill: ReturnType<typeof setInterval> | undefined;

  function silence(): void {
    clearInterval(refill);
    for (const each of set) each.stop();
    set = [];
  }

  return {
    play(sounds, seconds) {
      silence();
      context ??= new AudioContext();
      const clock = context;
      if (clock.state === "suspended") void clock.resume(); // the first tap of the run allows it
      const zero = clock.currentTime - seconds; // where the drill's clock began on the audio clock
      const waiting = sounds.filter((sound) => zero + sound.at >= clock.currentTime);
      const fill = () => {
        while (waiting[0] && zero + waiting[0].at < clock.currentTime + kAheadSeconds) {
          const next = waiting.shift();
          if (next) set.push(setSound(clock, next.sound, zero + next.at));
        }
      };
      fill();
      refill = setInterval(fill, kRefillMilliseconds);
    },
    silence,
  };
}
