// Marks the suite's own lines, so that the runner can tell them from the workbench's log.
// Mocha keeps its own reference to console.log, so both are replaced.

/** Runs `act` with every printed line marked by `@@`. */
export async function marked<T>(reporter: { consoleLog: typeof console.log }, act: () => Promise<T>): Promise<T> {
  const log = console.log;
  console.log = reporter.consoleLog = (first?: unknown, ...rest: unknown[]) => (
    typeof first === 'string' ? log(`@@${first}`, ...rest) : log('@@', first ?? '', ...rest));
  try {
    return await act();
  } finally {
    console.log = reporter.consoleLog = log;
  }
}
