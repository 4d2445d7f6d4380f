// What the suites that drive a page share: a condition that must hold, and checks that are counted one by one.

export function expect(holds, what) { if (!holds) throw new Error(what); }

/** Counts checks, says what came of each, takes a picture of one that failed, and does `after` behind each. */
export function checks(picture, after = async () => {}) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  return {
    count,
    check: async (name, act) => {
      try {
        await act();
        count.passed += 1;
        console.log(`  ok ${name}`);
      } catch (error) {
        count.failed += 1;
        console.log(`  not ok ${name}: ${error.message}`);
        await picture(`failed-${name.replace(/\W+/g, '-').slice(0, 40)}`);
      }
      await after();
    },
  };
}
