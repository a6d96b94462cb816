/** For Node only: the report's fonts from their packages on disk. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { ReportFonts } from './fonts.ts';

const FILES: Record<keyof ReportFonts, string> = {
  regular: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  semibold: '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  heading: '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
};

/**
 * The three fonts as bytes. `from` is where the search for their packages starts, this module by default; a
 * bundled program gives its own `import.meta.url`.
 */
export async function loadFonts(from: string = import.meta.url): Promise<ReportFonts> {
  const { resolve } = createRequire(from);
  const read = async (path: string) => new Uint8Array(await readFile(resolve(path)));
  const [regular, semibold, heading] = await Promise.all([
    read(FILES.regular),
    read(FILES.semibold),
    read(FILES.heading),
  ]);
  return { regular, semibold, heading };
}
