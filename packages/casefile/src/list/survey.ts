/**
 * Looks an inventory over before any case is made of it: what is wrong, which properties there are, and which of them
 * is likely the label and which the species. Memory stays small however many trees there are.
 */
import { InputFault } from '@standfast/engine';
import { type FeatureText, featureScanner } from './features.ts';
import { type InventoryMapping, type InventoryTree, propertyText, treeOfFeature } from './inventory.ts';

export interface InventoryProperty {
  name: string;
  /** Trees that have something there. */
  filled: number;
  /** A few values as examples. */
  examples: string[];
  /** Share of the filled values looked at that no other tree has, 0 to 1. */
  distinctShare: number;
}

export interface InventorySurvey {
  trees: number;
  /** Features that are no tree with a position. */
  faulty: number;
  /** The first of their faults. */
  faults: { index: number; text: string }[];
  properties: InventoryProperty[];
  guess: InventoryMapping;
}

/** Faults told one by one. */
const FAULTS_KEPT = 20;
/** Values by which a property is judged. */
const VALUES_JUDGED = 3000;
const EXAMPLES = 3;
/** Properties told apart; a file that makes up names without end must not fill the memory. */
const PROPERTIES_KEPT = 500;
/** A name alone or a value alone is not enough to take a property for something. */
const LIKELY = 0.95;

const LABEL_NAME =
  /^(label|name|(tree|asset|plant|baum|arbre|arbol)?[ _-]?(id|no|nr|num(ber|mer|ero)?|tag|ref|code|label)|objectid|fid)$/i;
const SPECIES_NAME =
  /^(sp|spp|species|botanical|botanic|latin|scientific|taxon|genus|baumart|art|gattung|espece|especie)([ _-]?(name|latin|botanical|scientific|binomial|bot|nom|lat))?$|^(botanical|scientific|latin)[ _-]?name$|^name[ _-]?(latin|botanical)$|^nom[ _-]?latin$/i;
const BINOMIAL = /^[A-Z][a-z]+(\s+[x×])?\s+[a-z][a-z-]+/;

interface Seen {
  filled: number;
  values: Set<string>;
  judged: number;
  binomials: number;
  examples: string[];
}

export interface Surveyor {
  push(piece: string): void;
  /** @throws InputFault when the file as a whole is at fault, or holds no tree */
  end(): InventorySurvey;
}

/** @param name the file's name, for messages */
export function surveyor(name: string): Surveyor {
  const scanner = featureScanner(name);
  const seen = new Map<string, Seen>();
  const faults: InventorySurvey['faults'] = [];
  let trees = 0;
  let faulty = 0;
  return {
    push(piece) {
      for (const feature of scanner.push(piece)) {
        const tree = treeOrFault(feature, name);
        if (tree instanceof InputFault) {
          faulty++;
          if (faults.length < FAULTS_KEPT) faults.push({ index: feature.index, text: tree.what });
        } else {
          trees++;
          look(tree, seen);
        }
      }
    },
    end() {
      scanner.end();
      if (trees === 0)
        throw new InputFault(
          faulty === 0
            ? 'there is no feature in this file: export the layer of trees'
            : `none of its ${faulty} features is a tree with a position; ${faults[0] ? `feature ${faults[0].index}: ${faults[0].text}` : ''}`,
          name,
        );
      const properties = [...seen].map(
        ([property, { filled, values, judged, examples }]): InventoryProperty => ({
          name: property,
          filled,
          examples,
          distinctShare: judged === 0 ? 0 : values.size / judged,
        }),
      );
      return { trees, faulty, faults, properties, guess: guessed(properties, seen, trees) };
    },
  };
}

/** The tree, or what is wrong with the feature. */
export function treeOrFault(feature: FeatureText, name: string): InventoryTree | InputFault {
  try {
    return treeOfFeature(feature, name);
  } catch (thrown) {
    if (thrown instanceof InputFault) return thrown;
    throw thrown;
  }
}

function look(tree: InventoryTree, seen: Map<string, Seen>): void {
  for (const property of Object.keys(tree.properties)) {
    const text = propertyText(tree, property);
    let about = seen.get(property);
    if (!about) {
      if (seen.size >= PROPERTIES_KEPT) continue;
      about = { filled: 0, values: new Set(), judged: 0, binomials: 0, examples: [] };
      seen.set(property, about);
    }
    if (text === '') continue;
    about.filled++;
    if (about.judged >= VALUES_JUDGED) continue;
    about.judged++;
    if (BINOMIAL.test(text)) about.binomials++;
    if (about.examples.length < EXAMPLES && !about.values.has(text)) about.examples.push(text.slice(0, 60));
    about.values.add(text);
  }
}

/** The likeliest of the properties for each part, by name and by what stands there; none when none is likely. */
function guessed(
  properties: readonly InventoryProperty[],
  seen: ReadonlyMap<string, Seen>,
  trees: number,
): InventoryMapping {
  const binomialShare = ({ name }: InventoryProperty) => {
    const { judged, binomials } = seen.get(name)!;
    return judged === 0 ? 0 : binomials / judged;
  };
  const species = best(properties, (property) => {
    const named = SPECIES_NAME.test(property.name) ? 1 : 0;
    return property.filled === 0 ? 0 : named + 1.5 * binomialShare(property) - (named ? 0 : 0.4);
  });
  const label = best(
    properties.filter(({ name }) => name !== species),
    (property) => {
      const named = LABEL_NAME.test(property.name) ? 1 : 0;
      // Numbers made by a program are worse labels than what the trade painted on the tree.
      const made = /^(objectid|fid|id)$/i.test(property.name) ? 0.3 : 0;
      return named - made + 0.6 * property.distinctShare * (property.filled / trees) - (named ? 0.1 : 0);
    },
  );
  return { label, species };
}

function best(
  properties: readonly InventoryProperty[],
  score: (property: InventoryProperty) => number,
): string | null {
  let found: string | null = null;
  let highest = LIKELY;
  for (const property of properties) {
    const value = score(property);
    if (value > highest) [found, highest] = [property.name, value];
  }
  return found;
}
