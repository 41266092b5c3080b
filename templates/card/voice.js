
// Says the run with a voice of this device. Voices that a phone would have to ask a server for are left alone.

/** A voice that needs no network: an English one where there is one; none where the device has none. */
function ownVoice() {
  const voices = "speechSynthesis" in window ? speechSynthesis.getVoices().filter(voice => voice.localService) : [];
  return voices.find(voice => voice.lang.startsWith("en")) ?? voices[0] ?? null;
}

/** Says the words in place of what is being said; whether there is a voice to say them. */
function say(words) {
  const voice = ownVoice();
  if (!voice) return false;
  const spoken = new SpeechSynthesisUtterance(words);
  spoken.voice = voice;
  speechSynthesis.cancel();
  speechSynthesis.speak(spoken);
  return true;
}
