/** Where the repository lies, and paths from there. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** @param {...string} parts path below the repository's root */
export const fromRoot = (...parts) => path.join(root, ...parts);
