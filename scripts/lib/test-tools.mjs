/** Programs the tests call beside npm packages: a browser, and independent readers of PDF. */
import { programExists, run } from './child.mjs';
import { say } from './say.mjs';

const NEEDED = [
  { programs: ['chromium', 'chromium-browser', 'google-chrome'], debian: 'chromium', use: 'browser tests' },
  { programs: ['pdftotext'], debian: 'poppler-utils', use: 'reading reports back' },
  { programs: ['qpdf'], debian: 'qpdf', use: 'checking reports' },
];

const missing = () => NEEDED.filter(({ programs }) => !programs.some(programExists));

/**
 * Installs what is missing from Debian's packages when this user may, and otherwise says what to install.
 * @returns {Promise<string[]>} Debian names of what is still missing
 */
export async function testTools() {
  if (missing().length && process.getuid?.() === 0 && programExists('apt-get')) {
    const names = missing().map(({ debian }) => debian);
    say(`Installing ${names.join(', ')} (Debian packages)…`);
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    const quiet = { env, stdio: /** @type {const} */ (['ignore', 'ignore', 'inherit']) };
    await run('apt-get', ['-qq', 'update'], quiet);
    await run('apt-get', ['-qq', 'install', '-y', '--no-install-recommends', ...names], quiet);
  }
  const still = missing();
  for (const { debian, use } of still) say(`Missing for ${use}: ${debian}.`);
  if (still.length) {
    say(`On Debian or Ubuntu: sudo apt-get install ${still.map(({ debian }) => debian).join(' ')}`);
  }
  return still.map(({ debian }) => debian);
}
