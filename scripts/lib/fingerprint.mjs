/** One hash over files and folders, to tell whether anything a build reads has changed since. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { root } from './root.mjs';

/** Built, installed and test files are never a build's input. */
const LEFT_OUT =
  /(^|\/)(node_modules|dist|dist\.next|coverage)$|\.test\.tsx?$|\.generated\.ts$|\.tsbuildinfo$/;

/**
 * @param {string[]} inputs files and folders, relative to the root; what does not exist counts as absent
 * @returns {string} hexadecimal SHA-256 over every file's path and content
 */
export function fingerprint(inputs) {
  const hash = createHash('sha256');
  for (const input of inputs) {
    for (const file of filesBelow(input)) {
      const content = readFileSync(path.join(root, file));
      hash.update(`${file}\0${content.length}\0`).update(content);
    }
  }
  return hash.digest('hex');
}

/**
 * @param {string} relative
 * @returns {string[]}
 */
function filesBelow(relative) {
  const absolute = path.join(root, relative);
  if (!existsSync(absolute) || LEFT_OUT.test(relative)) return [];
  if (!statSync(absolute).isDirectory()) return [relative];
  return readdirSync(absolute)
    .sort()
    .flatMap((name) => filesBelow(`${relative}/${name}`));
}
