// The score that stands in this page, with names for its columns. Its times are in seconds at the written tempo.
const readScore = () => {
  const { lines, notes, beats, tonics, ...rest } = JSON.parse(document.getElementById("score").textContent);
  return {
    ...rest,
    lines: lines.map(([start, end, answer, tempo, round]) => ({ start, end, answer, tempo, round })),
    notes: notes.map(([hz, start, end, cell, line, middle, slide, swells], i) => (
      { hz, start, end, cell, line, middle: middle ?? end, slide, swells, isFirst: line !== notes[i - 1]?.[4] })),
    beats: beats.map(([start, accent]) => ({ start, accent })),
    tonics: new Map(tonics),
  };
};

// The index of the first that starts at a time or later.
const firstFrom = (list, time) => {
  let low = 0, high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle].start < time) low = middle + 1; else high = middle;
  }
  return low;
};
