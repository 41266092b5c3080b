// A test is a sentence and a function; `equal` compares whole values, `near` numbers.

const tests = new Map();

export const test = (sentence, body) => tests.set(sentence, body);
export const shared = async (file, part) => (await (await fetch(`/shared/${file}.json`)).json())[part];

export function equal(actual, expected) {
  const [one, other] = [actual, expected].map(value => JSON.stringify(value, plain));
  if (one !== other) throw new Error(`got ${one}\nexpected ${other}`);
}

export function near(actual, expected, far = 1e-9) {
  if (!(Math.abs(actual - expected) <= far)) throw new Error(`got ${actual}, expected ${expected}`);
}

/** Runs the test of that sentence; gives what is wrong, or nothing. */
export async function run(sentence) {
  try {
    await tests.get(sentence)();
    return "";
  } catch (error) {
    return error.stack;
  }
}

const plain = (_, value) => (ArrayBuffer.isView(value) || value instanceof Set ? [...value] : value instanceof Map ? [...value.entries()] : value);
