/** What a firm keeps once for its reports, from a folder with `firm.json` or from that file itself. */
import path from 'node:path';
import { type Firm, parseFirm } from '@standfast/casefile';
import { bagFromFolder } from '@standfast/casefile/node';
import { look, readInput } from './read.ts';

const FIRM_JSON = 'firm.json';
/** Letterhead and wording, without pictures. */
const LIMIT_BYTES = 5e6;
/** Logo and signature with what else may lie beside them. */
const LIMITS = { maxFiles: 200, maxFileBytes: 2e6, maxTotalBytes: 50e6 };

/**
 * Reads a firm's folder or JSON file.
 * @throws InputFault when it cannot be read, holds what it cannot hold, or names a picture that is not there
 */
export async function readFirm(where: string): Promise<Firm> {
  const isFolder = (await look(where)).isDirectory();
  const file = isFolder ? path.join(where, FIRM_JSON) : where;
  const bytes = await readInput(file, "a firm's letterhead (JSON)", LIMIT_BYTES);
  return parseFirm(bytes, await bagFromFolder(isFolder ? where : path.dirname(where), LIMITS), file);
}
