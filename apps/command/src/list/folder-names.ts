/** Names of case folders made of trees' labels. */

/** Names that Windows keeps for itself. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const LONGEST = 60;

/**
 * Gives each tree a folder name of its own that every file system takes: the label's letters and digits, whatever the
 * script. A tree without a label, or with one that an earlier tree bears (upper and lower case alike), has its place in
 * the file in its name too.
 */
export function folderNames(): (label: string, index: number) => string {
  const taken = new Set<string>();
  return (label, index) => {
    const words = label
      .normalize('NFC')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, LONGEST);
    const plain = words === '' ? `feature-${index}` : RESERVED.test(words) ? `tree-${words}` : words;
    let name = plain;
    for (let again = 0; taken.has(name.toLowerCase()); again++)
      name = again === 0 ? `${plain}-feature-${index}` : `${plain}-feature-${index}-${again}`;
    taken.add(name.toLowerCase());
    return name;
  };
}
