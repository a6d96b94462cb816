import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { caseText } from '../saveCase.ts';
import { parseCase } from '../schema/parseCase.ts';
import { caseOfTree, labelCounter, propertyText, repeatsInWords, treeOfFeature } from './inventory.ts';
import { surveyor } from './survey.ts';

const point = (coordinates: unknown, properties: unknown = {}) => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates },
  properties,
});

function survey(features: unknown[]) {
  const looking = surveyor('trees.geojson');
  looking.push(JSON.stringify({ type: 'FeatureCollection', features }));
  return looking.end();
}

function faultOf(feature: unknown): string {
  try {
    treeOfFeature({ index: 12, text: JSON.stringify(feature) }, 'trees.geojson');
  } catch (thrown) {
    if (thrown instanceof InputFault) return thrown.message;
    throw thrown;
  }
  return 'nothing is wrong';
}

describe('a tree of an inventory', () => {
  it.each([
    [{ type: 'Feature', geometry: null, properties: {} }, /no geometry, so no position/],
    [
      { type: 'Feature', geometry: { type: 'Polygon', coordinates: [] } },
      /geometry is a "Polygon".*centroids/,
    ],
    [point([565000.5, 5934000.1]), /565000\.5, 5934000\.1.*map projection.*EPSG:4326/],
    [point([53.5, 110.1]), /latitude first/],
    [point([200, 10]), /lie outside/],
    [point(['9.9', 53.5]), /not two numbers/],
    [point([9.9]), /not \[longitude, latitude\]/],
    [{ type: 'Tree' }, /not "Feature"/],
    [17, /no feature/],
    [point([9.9, 53.5], [1]), /properties are no object/],
  ])('%j is refused with its place in the file', (feature, words) => {
    expect(faultOf(feature)).toMatch(words);
    expect(faultOf(feature)).toMatch(/^trees\.geojson: features\[12\]: /);
  });

  it('becomes a case that reads back, with label, species and place, and no visit', () => {
    const tree = treeOfFeature(
      {
        index: 0,
        text: JSON.stringify(point([9.98765432, 53.12345678, 12], { nr: 17, art: ' Tilia  cordata ' })),
      },
      'trees.geojson',
    );
    expect(propertyText(tree, 'nr')).toBe('17');
    const made = caseOfTree(tree, { label: 'nr', species: 'art' });
    const { caseFile } = parseCase(new TextEncoder().encode(caseText(made)), 'case.json');
    expect(caseFile).toEqual(made);
    expect(made.tree).toEqual({ label: '17', species: 'Tilia cordata' });
    expect(made.place).toEqual({ latitude: 53.12345678, longitude: 9.98765432 });
    expect(made.visitedOn).toBeUndefined();
    expect(caseOfTree(tree, { label: null, species: 'missing' }).tree).toEqual({});
  });
});

describe('looking an inventory over', () => {
  it('guesses label and species by their names and by what stands there', () => {
    const species = ['Tilia cordata', 'Quercus robur', 'Acer platanoides', 'Aesculus hippocastanum'];
    const features = Array.from({ length: 40 }, (_, i) =>
      point([9.9 + i / 1000, 53.5], {
        objectid: i,
        street: 'Elm Row',
        Baum_Nr: `B-${i}`,
        botanical: species[i % 4],
        height: 10 + (i % 9),
      }),
    );
    const { trees, faulty, guess, properties } = survey(features);
    expect({ trees, faulty, guess }).toEqual({
      trees: 40,
      faulty: 0,
      guess: { label: 'Baum_Nr', species: 'botanical' },
    });
    expect(properties.find(({ name }) => name === 'street')).toMatchObject({
      filled: 40,
      examples: ['Elm Row'],
      distinctShare: 1 / 40,
    });
    const unnamed = survey(
      features.map(({ properties, ...rest }) => ({
        ...rest,
        properties: { a: (properties as { botanical: string }).botanical },
      })),
    );
    expect(unnamed.guess).toEqual({ label: null, species: 'a' });
  });

  it('counts what is at fault and goes on, but refuses a file without a single tree', () => {
    const found = survey([point([9, 53]), { type: 'Feature', geometry: null }, point([4e5, 5e6])]);
    expect(found).toMatchObject({ trees: 1, faulty: 2 });
    expect(found.faults.map(({ index }) => index)).toEqual([1, 2]);
    expect(() => survey([])).toThrow(/no feature in this file/);
    expect(() => survey([{ type: 'Feature', geometry: null }])).toThrow(/none of its 1 features.*feature 0/);
  });
});

describe('labels', () => {
  it('borne twice are told with both places', () => {
    const counter = labelCounter();
    ['A', 'B', 'A', '', 'A'].forEach((label, i) => {
      counter.count(label, i);
    });
    const [twice, none] = repeatsInWords(counter.repeats());
    expect(twice).toMatch(
      /2 trees bear a label that another bears: “A” at features 0 and 2, “A” at features 0 and 4\./,
    );
    expect(none).toBe('One tree has no label.');
    expect(repeatsInWords(labelCounter().repeats())).toEqual([]);
  });
});
