/** Trees of an inventory: points with any properties, one of which is the label and one the species. */
import { InputFault } from '@standfast/engine';
import { newCase } from '../actions/newCase.ts';
import type { CaseFile } from '../schema/schema.ts';
import type { FeatureText } from './features.ts';

export interface InventoryTree {
  /** Place of the feature in its file, from 0. */
  index: number;
  longitude: number;
  latitude: number;
  properties: Record<string, unknown>;
}

/** Which property is what; null leaves it out. */
export interface InventoryMapping {
  label: string | null;
  species: string | null;
}

/**
 * Reads one feature as a tree.
 * @param name the file's name, for messages
 * @throws InputFault that names the feature's place in the file
 */
export function treeOfFeature({ index, text }: FeatureText, name: string): InventoryTree {
  const fault = (what: string) => new InputFault(what, `${name}: features[${index}]`);
  let feature: unknown;
  try {
    feature = JSON.parse(text);
  } catch {
    throw fault('this feature is not valid JSON: export the file anew');
  }
  if (!isObject(feature)) throw fault('this is no feature: each must be an object of type Feature');
  if (feature.type !== 'Feature')
    throw fault(`type is ${shown(feature.type)}, not "Feature": export the layer of trees as GeoJSON`);
  const { geometry, properties } = feature;
  if (geometry === null || geometry === undefined)
    throw fault('it has no geometry, so no position: place the tree in the inventory, or leave it out');
  if (!isObject(geometry)) throw fault('its geometry is no GeoJSON geometry');
  if (geometry.type !== 'Point')
    throw fault(
      `its geometry is a ${shown(geometry.type)}, and a tree is a Point: export the layer of trees, or the centroids`,
    );
  const { coordinates } = geometry;
  if (!Array.isArray(coordinates) || coordinates.length < 2)
    throw fault('its coordinates are not [longitude, latitude]');
  const [longitude, latitude] = coordinates as [unknown, unknown];
  if (!isNumber(longitude) || !isNumber(latitude))
    throw fault(`its coordinates ${shown([longitude, latitude])} are not two numbers`);
  checkOnGlobe(longitude, latitude, fault);
  if (properties !== null && properties !== undefined && !isObject(properties))
    throw fault('its properties are no object');
  return { index, longitude, latitude, properties: isObject(properties) ? properties : {} };
}

/** Tells projected metres and swapped axes from a slip. */
function checkOnGlobe(longitude: number, latitude: number, fault: (what: string) => InputFault): void {
  if (Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90) return;
  const pair = `${longitude}, ${latitude}`;
  if (Math.abs(longitude) > 400 || Math.abs(latitude) > 400)
    throw fault(
      `the coordinates ${pair} are not longitude and latitude but look like metres or feet of a map projection: export the file as WGS 84 (EPSG:4326)`,
    );
  if (Math.abs(longitude) <= 90 && Math.abs(latitude) <= 180)
    throw fault(
      `the coordinates ${pair} seem to be latitude first, and GeoJSON has longitude first: export the file anew`,
    );
  throw fault(`the coordinates ${pair} lie outside of -180 to 180 and -90 to 90 degrees`);
}

/** A property as the text of a field: numbers as they are written, anything nested left out. */
export function propertyText(tree: InventoryTree, property: string | null): string {
  if (property === null) return '';
  const value = tree.properties[property];
  if (typeof value === 'string') return value.replace(/\s+/g, ' ').trim();
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : '';
}

/** A new case for a tree of the inventory: where it is, what it is called, what it is. Nobody has visited it yet. */
export function caseOfTree(tree: InventoryTree, mapping: InventoryMapping): CaseFile {
  const label = propertyText(tree, mapping.label);
  const species = propertyText(tree, mapping.species);
  const { latitude, longitude } = tree;
  return {
    ...newCase(),
    place: { latitude, longitude },
    tree: { ...(label ? { label } : {}), ...(species ? { species } : {}) },
  };
}

/** Labels that more than one tree bears, met while the trees go by. */
export function labelCounter(): { count(label: string, index: number): void; repeats(): RepeatedLabels } {
  const first = new Map<string, number>();
  const repeated: RepeatedLabels['examples'] = [];
  let trees = 0;
  let unlabelled = 0;
  return {
    count(label, index) {
      if (label === '') {
        unlabelled++;
        return;
      }
      const earlier = first.get(label);
      if (earlier === undefined) first.set(label, index);
      else {
        trees++;
        if (repeated.length < EXAMPLES) repeated.push({ label, first: earlier, again: index });
      }
    },
    repeats: () => ({ trees, unlabelled, examples: repeated }),
  };
}

export interface RepeatedLabels {
  /** Trees whose label an earlier tree bears. */
  trees: number;
  /** Trees without a label. */
  unlabelled: number;
  examples: { label: string; first: number; again: number }[];
}

const EXAMPLES = 5;

/** What to tell of them, one sentence each. */
export function repeatsInWords({ trees, unlabelled, examples }: RepeatedLabels): string[] {
  const told: string[] = [];
  if (trees > 0)
    told.push(
      `${trees === 1 ? 'One tree bears' : `${trees} trees bear`} a label that another bears: ${examples
        .map(({ label, first, again }) => `“${label}” at features ${first} and ${again}`)
        .join(
          ', ',
        )}${trees > examples.length ? ' and more' : ''}. Each is a case of its own; tell them apart by place, or choose another property as the label.`,
    );
  if (unlabelled > 0)
    told.push(`${unlabelled === 1 ? 'One tree has' : `${unlabelled} trees have`} no label.`);
  return told;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

const shown = (value: unknown) => (JSON.stringify(value) ?? 'missing').slice(0, 60);
