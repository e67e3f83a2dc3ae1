// What is kept in this browser for the next time: the sounds for all pages, tempo and tonic for each drill. Where a browser keeps nothing, all works but
// begins anew.
const makeSettings = (drill) => {
  const forAll = "warmup-practice", forDrill = `warmup-practice: ${drill}`;

  const read = (key) => {
    try {
      const kept = JSON.parse(window.localStorage.getItem(key));
      return kept && typeof kept === "object" ? kept : {};
    } catch {
      return {};
    }
  };

  const write = (key, value) => {
    try {
      window.localStorage.setItem(key, JSON.stringify(value));
    } catch {
      // Nothing is kept.
    }
  };

  const clear = () => {
    try {
      window.localStorage.removeItem(forAll);
      window.localStorage.removeItem(forDrill);
    } catch {
      // There is nothing to clear.
    }
  };

  return {
    all: { ...read(forAll), ...read(forDrill) },
    keep: (all, own) => {
      write(forAll, all);
      write(forDrill, own);
    },
    clear,
  };
};
