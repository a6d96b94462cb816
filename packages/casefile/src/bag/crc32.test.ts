import { strToU8 } from 'fflate';
import { expect, it } from 'vitest';
import { crc32 } from './crc32.ts';

it('gives the check value of the catalogue of CRCs (Williams 1993: "123456789" is CBF43926)', () => {
  expect(crc32(strToU8('123456789'))).toBe(0xcbf43926);
  expect(crc32(new Uint8Array())).toBe(0);
});
