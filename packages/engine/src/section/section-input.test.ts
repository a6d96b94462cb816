import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { sectionInputFrom } from './section-input.ts';

const circle = { kind: 'circle', diameterMm: 990 };

describe('the section command’s input', () => {
  it('reads every kind of outline, voids left out or given', () => {
    expect(sectionInputFrom({ outline: circle }, 's.json')).toEqual({
      outline: circle,
      voids: [],
      warnings: [],
    });
    const radii = { kind: 'radii', radii: [{ azimuthDeg: 0, radiusMm: 500 }] };
    const voids = [
      [
        [0, 0],
        [100, 0],
        [0, 100],
      ],
    ];
    expect(sectionInputFrom({ outline: radii, voids }, 's.json')).toEqual({
      outline: radii,
      voids,
      warnings: [],
    });
    const ellipse = { kind: 'ellipse', longMm: 900, shortMm: 800, longAxisDeg: 30 };
    expect(sectionInputFrom({ outline: ellipse, id: 's1', note: '' }, 's.json').warnings).toEqual([]);
    const polygon = { kind: 'polygon', points: voids[0] };
    expect(sectionInputFrom({ outline: polygon }, 's.json').outline).toEqual(polygon);
  });

  it('remarks on fields it does not know', () => {
    const { warnings } = sectionInputFrom({ outline: { ...circle, longMm: 3 }, void: [] }, 's.json');
    expect(warnings).toHaveLength(2);
    expect(warnings[0]).toContain('"void"');
    expect(warnings[1]).toContain('"outline.longMm"');
  });

  it.each<[string, unknown, string, RegExp]>([
    ['a list', [], 's.json', /a list/],
    ['nothing', null, 's.json', /null/],
    ['no outline', {}, 's.json: outline', /missing/],
    ['no kind', { outline: {} }, 's.json: outline.kind', /"circle", "ellipse"/],
    ['another kind', { outline: { kind: 'heart' } }, 's.json: outline.kind', /"heart"/],
    [
      'text for a number',
      { outline: { kind: 'circle', diameterMm: '990' } },
      's.json: outline.diameterMm',
      /without quotes/,
    ],
    ['no diameter', { outline: { kind: 'circle' } }, 's.json: outline.diameterMm', /missing/],
    [
      'negative',
      { outline: { kind: 'circle', diameterMm: -1 } },
      's.json: outline.diameterMm',
      /more than 0/,
    ],
    ['radii no list', { outline: { kind: 'radii', radii: 5 } }, 's.json: outline.radii', /list/],
    [
      'radius no object',
      { outline: { kind: 'radii', radii: [5] } },
      's.json: outline.radii[0]',
      /azimuthDeg/,
    ],
    [
      'points no pairs',
      { outline: { kind: 'polygon', points: [[0, 0, 0]] } },
      's.json: outline.points[0]',
      /two numbers/,
    ],
    [
      'crossing',
      {
        outline: {
          kind: 'polygon',
          points: [
            [0, 0],
            [9, 9],
            [9, 0],
            [0, 9],
          ],
        },
      },
      's.json: outline.points',
      /crosses/,
    ],
    ['voids no list', { outline: circle, voids: {} }, 's.json: voids', /list of rings/],
    [
      'one ring not nested',
      {
        outline: circle,
        voids: [
          [0, 0],
          [1, 0],
          [0, 1],
        ],
      },
      's.json: voids[0][0]',
      /point/,
    ],
    [
      'void crossing',
      {
        outline: circle,
        voids: [
          [
            [0, 0],
            [9, 9],
            [9, 0],
            [0, 9],
          ],
        ],
      },
      's.json: voids[0]',
      /crosses/,
    ],
    [
      'infinite',
      {
        outline: circle,
        voids: [
          [
            [0, 0],
            [Number.POSITIVE_INFINITY, 9],
            [9, 0],
          ],
        ],
      },
      's.json: voids[0][1]',
      /two numbers/,
    ],
  ])('%s: a fault with its field', (_, json, where, words) => {
    const attempt = () => sectionInputFrom(json, 's.json');
    expect(attempt).toThrow(InputFault);
    expect(attempt).toThrow(`${where}:`);
    expect(attempt).toThrow(words);
  });
});
