/** Running other programs. */
import { spawn, spawnSync } from 'node:child_process';
import { root } from './root.mjs';

/**
 * Runs a program to its end with this terminal, and gives its exit status (128 + n when a signal ended it).
 * @param {string} program
 * @param {string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, stdio?: import('node:child_process').StdioOptions }} [options]
 * @returns {Promise<number>}
 */
export function run(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: options.cwd ?? root,
      env: { ...process.env, ...options.env },
      stdio: options.stdio ?? 'inherit',
      shell: process.platform === 'win32' && program === 'npm',
    });
    child.on('error', reject);
    child.on('close', (status, signal) => resolve(status ?? (signal ? 130 : 1)));
  });
}

/**
 * Runs a program to its end, shows what it prints as it comes, and gives its exit status and what was printed.
 * @param {string} program
 * @param {string[]} args
 * @returns {Promise<{ status: number, heard: string }>}
 */
export function runHeard(program, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd: root, stdio: ['inherit', 'pipe', 'inherit'] });
    let heard = '';
    child.stdout.setEncoding('utf8');
    child.stdout.on('data', (text) => {
      heard += text;
      process.stdout.write(text);
    });
    child.on('error', reject);
    child.on('close', (status) => resolve({ status: status ?? 1, heard }));
  });
}

/**
 * Whether a program answers by this name.
 * @param {string} program
 */
export function programExists(program) {
  const finder = process.platform === 'win32' ? 'where' : 'which';
  return spawnSync(finder, [program], { stdio: 'ignore' }).status === 0;
}
