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
  // Sounds from here on. `seconds` tells what the drill's clock shows whenever it is asked.
  play(sounds: Sound[], seconds: () => number): void;
  silence(): void;
}

export function openMetronome(): Metronome {
  let context: AudioContext | undefined;
  let set: SetSound[] = [];
  let refill: ReturnType<typeof setInterval> | undefined;
  let playing: { sounds: Sound[]; seconds: () => number } | undefined;

  function clear(): void {
    clearInterval(refill);
    for (const each of set) each.stop();
    set = [];
  }

  // Finds the drill's zero on the audio clock, and sets what is still to come.
  function anchor(clock: AudioContext): void {
    clear();
    if (!playing) return;
    const zero = clock.currentTime - playing.seconds();
    const waiting = playing.sounds.filter((sound) => zero + sound.at >= clock.currentTime);
    const fill = () => {
      while (waiting[0] && zero + waiting[0].at < clock.currentTime + kAheadSeconds) {
        const next = waiting.shift();
        if (next) set.push(setSound(clock, next.sound, zero + next.at));
      }
    };
    fill();
    refill = setInterval(fill, kRefillMilliseconds);
  }

  function open(): AudioContext {
    const opened = new AudioContext();
    // The audio clock stands until the first tap, and while a call has the phone: found anew when it goes.
    opened.onstatechange = () => {
      if (opened.state === "running") anchor(opened);
    };
    return opened;
  }

  return {
    play(sounds, seconds) {
      playing = { sounds, seconds };
      context ??= open();
      if (context.state === "running") anchor(context);
      else void context.resume();
    },
    silence() {
      playing = undefined;
      clear();
    },
  };
}
