// The singer's own take: it stays in this page until it is closed, unless it is saved.
makeRecorder(
  { button: "record", says: "recorded", level: "level", taken: "taken", sound: "take-sound", save: "save" },
  {
    record: "Record",
    stop: "Stop recording",
    none: "There is no microphone that this page may use here.",
    refused: "The microphone was not allowed.",
    silent: "Hardly anything was heard: is the microphone on?",
  },
  () => {});
by("take").hidden = false;
