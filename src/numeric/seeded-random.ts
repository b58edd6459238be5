import { ArgumentError } from "../issues/index.js";

/**
 * Uniform pseudo-random numbers in [0, 1), the same for the same seed everywhere: the Mersenne Twister
 * MT19937, two 32-bit outputs making one number of 53 bits.
 * @param seed whole number 0 … 2³² − 1
 * @returns a function that gives the next number
 * @throws {ArgumentError} when the seed is no such number
 * @source M. Matsumoto, T. Nishimura, ACM TOMACS 8 (1998) 3–30; initialisation and the 53-bit form of 2002
 * @example seededRandom(5489)(); // => 0.8147236863931789
 */
export function seededRandom(seed: number): () => number {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff)
    throw new ArgumentError("seed", "a whole number from 0 to 4294967295", seed);
  const state = initialState(seed);
  let position = SIZE;
  const nextWord = (): number => {
    if (position === SIZE) {
      renew(state);
      position = 0;
    }
    return tempered(state[position++]!);
  };
  return () => {
    const high = nextWord() >>> 5;
    const low = nextWord() >>> 6;
    return (high * 2 ** 26 + low) / 2 ** 53;
  };
}

const SIZE = 624;
const SHIFT = 397;

function initialState(seed: number): Uint32Array {
  const state = new Uint32Array(SIZE);
  state[0] = seed;
  for (let i = 1; i < SIZE; i++) {
    const before = state[i - 1]!;
    state[i] = Math.imul(before ^ (before >>> 30), 1812433253) + i;
  }
  return state;
}

function renew(state: Uint32Array): void {
  for (let i = 0; i < SIZE; i++) {
    const mixed = (state[i]! & 0x80000000) | (state[(i + 1) % SIZE]! & 0x7fffffff);
    state[i] = state[(i + SHIFT) % SIZE]! ^ (mixed >>> 1) ^ (mixed & 1 ? 0x9908b0df : 0);
  }
}

function tempered(word: number): number {
  let mixed = word ^ (word >>> 11);
  mixed ^= (mixed << 7) & 0x9d2c5680;
  mixed ^= (mixed << 15) & 0xefc60000;
  return (mixed ^ (mixed >>> 18)) >>> 0;
}
