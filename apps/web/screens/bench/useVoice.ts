import { useEffect, useState } from 'react';

/**
 * The voice of this device that can read English; `null`: it has none. Voices that would send the words to another
 * machine are none of it.
 */
export function useVoice(): SpeechSynthesisVoice | null {
  const [voice, setVoice] = useState<SpeechSynthesisVoice | null>(null);
  useEffect(() => {
    const { speechSynthesis } = window as Partial<Window>;
    if (speechSynthesis === undefined) return;
    const look = () =>
      setVoice(
        speechSynthesis
          .getVoices()
          .find(({ localService, lang }) => localService && /^en(?:[-_]|$)/iu.test(lang)) ?? null,
      );
    look();
    speechSynthesis.addEventListener('voiceschanged', look);
    return () => speechSynthesis.removeEventListener('voiceschanged', look);
  }, []);
  return voice;
}

/** Reads words aloud whenever they are others, in place of what was being read; nothing without a voice. */
export function useReadAloud(words: string, voice: SpeechSynthesisVoice | null): void {
  useEffect(() => {
    if (voice === null || words === '') return;
    const speech = new SpeechSynthesisUtterance(words);
    speech.voice = voice;
    speech.lang = voice.lang;
    speechSynthesis.cancel();
    speechSynthesis.speak(speech);
    return () => speechSynthesis.cancel();
  }, [words, voice]);
}
