/**
 * Reading a tree's name as written: cultivars, authors, hybrids, spelling of case, common names.
 */
import { genera, woodGreen, woodNames } from './tables.generated.ts';

/** A name as understood: always a genus when it is botanical, a species where it says one. */
export interface ReadName {
  genus: string;
  /** `Genus species`, or null for a genus alone, a hybrid or an unnamed species. */
  binomial: string | null;
}

const plain = (text: string) =>
  text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[’']/g, "'")
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();

const commonNames = new Map<string, string>();
for (const row of woodGreen) commonNames.set(plain(row.common.replace(/\s*\(.*\)/, '')), row.scientific);
for (const row of woodNames) commonNames.set(plain(row.name), row.scientific);

const knownGenera = new Map<string, string>();
for (const row of genera) knownGenera.set(row.genus.toLowerCase(), row.genus);
for (const row of woodGreen) {
  const genus = row.scientific.split(' ')[0]!;
  knownGenera.set(genus.toLowerCase(), genus);
}

/** A name made of a genus and perhaps a species; null when the genus is not one of the tables'. */
function botanical(name: string): ReadName | null {
  const words = plain(name)
    .replace(/'[^']*'|"[^"]*"|\([^)]*\)/g, ' ')
    .replace(/×/g, ' x ')
    .split(/\s+/)
    .filter((word) => word !== '' && word !== 'x');
  const genus = knownGenera.get(words[0] ?? '');
  if (!genus) return null;
  const hybrid = /(^|\s)[x×](\s|$)|×/.test(name.toLowerCase());
  const epithet = words[1];
  const named =
    epithet !== undefined && /^[a-z-]{3,}$/.test(epithet) && epithet !== 'spp' && epithet !== 'species';
  return { genus, binomial: named && !hybrid ? `${genus} ${epithet}` : null };
}

/**
 * What tree a written name means, by botanical name, synonym or common name; null when none is recognised.
 * A synonym gives the accepted name's genus and species.
 */
export function readName(name: string): ReadName | null {
  const withoutCultivar = plain(name)
    .replace(/'[^']*'|"[^"]*"/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const accepted =
    commonNames.get(withoutCultivar) ?? commonNames.get(withoutCultivar.split(' ').slice(0, 2).join(' '));
  if (accepted !== undefined) return botanical(accepted);
  return botanical(name);
}
