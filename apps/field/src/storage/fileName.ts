/** A file name made of a case's label that every system takes: letters of any script, digits, dashes. */
export function fileNameOf(label: string | undefined, date: string | undefined, ending: string): string {
  const words = [label?.trim() || 'case', date ?? '']
    .join(' ')
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80);
  return `standfast-${words || 'case'}.${ending}`;
}

/** Hands bytes to the person as a file to save. */
export function offerDownload(bytes: Uint8Array | string, name: string, type: string): void {
  const blob = new Blob([bytes as BlobPart], { type });
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // Firefox and Safari read the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
