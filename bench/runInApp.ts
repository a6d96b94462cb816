/** `npm run bench`, second part: how long somebody waits for a photographed strip in the app. */
import { ms, print, STRIP_TARGET_MS, say } from './printing.ts';
import { type StepTime, timesInApp } from './stripInApp.ts';

const times = await timesInApp();
if (!times) {
  say('A photographed strip in the app: not measured, there is no chromium here.');
} else {
  const row = (name: string, { clockMs, processorMs: used }: StepTime, word: string) => [
    name,
    ms(clockMs),
    `${ms(used)} of processor time${word}`,
  ];
  say(
    'A photographed strip of 12 megapixels in the app, in chromium, from a JPEG, by the clock; processor time of the whole browser',
  );
  print(
    times.flatMap(({ photo, megabytes, opened, read, whole }) => [
      [`${photo} (${megabytes.toFixed(1)} MB)`, '', ''],
      row('  from file chosen to corners', opened, ''),
      row('  from button pressed to line', read, ''),
      row('  both', whole, whole.clockMs < STRIP_TARGET_MS ? '; under 1.5 s' : '; OVER 1.5 s'),
    ]),
  );
}
