// The few assertions that the suite uses, without node:assert, so that the same files run in a web worker.
export class AssertionError extends Error { override name = 'AssertionError'; }

const fail = (message: string): never => { throw new AssertionError(message); };
const show = (value: unknown) => (typeof value === 'string' ? JSON.stringify(value) : JSON.stringify(value) ?? String(value));

export function ok(value: unknown, message = 'expected something, got nothing'): asserts value {
  if (!value) fail(message);
}
export function equal(actual: unknown, expected: unknown, message = ''): void {
  if (!Object.is(actual, expected)) fail(`${message} ${show(actual)} is not ${show(expected)}`.trim());
}
export function deepEqual(actual: unknown, expected: unknown, message = ''): void {
  if (JSON.stringify(actual) !== JSON.stringify(expected)) fail(`${message} ${show(actual)} is not ${show(expected)}`.trim());
}
export function match(actual: string, pattern: RegExp, message = ''): void {
  if (!pattern.test(actual)) fail(`${message} ${show(actual)} does not match ${pattern}`.trim());
}
