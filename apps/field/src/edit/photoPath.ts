/** A name for a photo in the case's files that is not taken yet. */
export function freePhotoPath(
  files: Readonly<Record<string, unknown>>,
  stem: string,
  ending: string,
): string {
  const taken = new Set(Object.keys(files).map((path) => path.toLowerCase()));
  for (let n = 1; ; n++) {
    const path = `photos/${stem}${n === 1 ? '' : `-${n}`}.${ending}`;
    if (!taken.has(path.toLowerCase())) return path;
  }
}
