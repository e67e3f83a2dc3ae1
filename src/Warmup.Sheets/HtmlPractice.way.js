// The way through the score: one pass after the other over stretches of it. A pass goes from "start" to "end" in the score's seconds; "sings" says whether
// the guide may sound in it, "again" whether its lines have been sung before.
const makeWay = ({ lines, seconds }, { loop, afterMe }) => {
  const [first, last] = loop ?? [0, lines.length - 1];
  const startOf = (line) => line === 0 && !loop ? 0 : lines[line].start;
  const endOf = (line) => line === lines.length - 1 && !loop ? seconds : lines[line].end;
  if (!afterMe) {
    const pass = { start: startOf(first), end: endOf(last), sings: true };
    return { pass: (k) => k > 0 && !loop ? null : { ...pass, again: k > 0 }, passAt: () => 0 };
  }

  // Each line comes twice: once to hear, once to sing.
  const count = 2 * (last - first + 1);
  return {
    pass: (k) => {
      if (k >= count && !loop) return null;
      const within = k % count, line = first + (within >> 1), isMine = within % 2 === 1;
      return {
        start: isMine ? lines[line].start : startOf(line),
        end: isMine ? endOf(line) : lines[line].end,
        sings: !isMine, again: k >= count,
      };
    },
    passAt: (time) => 2 * (Math.min(last, Math.max(first, firstFrom(lines, time + 1e-9) - 1)) - first),
  };
};

// The guide's choices: whether it sounds a note in a pass.
const guides = {
  "all": () => true,
  "first-note": (note) => note.isFirst,
  "first-time": (note, pass, line) => !pass.again && line.round === 0,
  "none": () => false,
};
