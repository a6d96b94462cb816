import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagFromZip } from '../bag/bagFromZip.ts';
import { zipOfBag } from '../bag/zipOfBag.ts';
import { parseCase } from '../schema/parseCase.ts';
import type { CaseFile } from '../schema/schema.ts';
import { readTraceTable } from '../trace/readTraceTable.ts';
import * as actions from './index.ts';

const CIRCLE = { kind: 'circle', diameterMm: 900 } as const;

function sample(): CaseFile {
  let caseFile = actions.newCase('2026-06-01');
  caseFile = actions.addSection(caseFile, { id: 's1', heightM: 0.3, outline: CIRCLE });
  caseFile = actions.addDrilling(caseFile, { sectionId: 's1' }, { id: 'd1', azimuthDeg: 10 });
  caseFile = actions.addFlare(caseFile, { id: 'f1', azimuthDeg: 40, widthMm: 300 });
  return actions.addDrilling(caseFile, { flareId: 'f1' }, { id: 'd2', azimuthDeg: 40, downDeg: 35 });
}

/** Freezes a case through and through, so that an edit in place would throw. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}

describe('edits', () => {
  const before = frozen(sample());

  it('a new case and all that is built from it can be read back', () => {
    expect(parseCase(JSON.stringify(before)).caseFile).toEqual(before);
    expect(parseCase(actions.newCase()).notices).toEqual([]);
  });

  it('set and take out fields of the visit', () => {
    const after = actions.setCaseField(before, 'title', 'T');
    expect(after.title).toBe('T');
    expect('title' in actions.setCaseField(after, 'title', undefined)).toBe(false);
    expect(actions.setClient(before, { name: 'A' }).client).toEqual({ name: 'A' });
    expect(actions.setClient(actions.setClient(before, { name: 'A' }), { address: 'B' }).client).toEqual({
      name: 'A',
      address: 'B',
    });
    expect(actions.setAssessor(before, { name: 'Q' }).assessor).toEqual({ name: 'Q' });
  });

  it('set and take out fields of the tree and crown', () => {
    const after = actions.setCrownField(actions.setTreeField(before, 'heightM', 20), 'widthM', 12);
    expect(after.tree).toEqual({ heightM: 20, crown: { widthM: 12 } });
    expect(actions.setTreeField(after, 'heightM', undefined).tree).toEqual({ crown: { widthM: 12 } });
  });

  it('change the wind code without carrying a speed over to another meaning', () => {
    const en = actions.setSiteFields(actions.setWindCode(before, 'EN 1991-1-4'), { basicWindSpeedMs: 25 });
    expect(en.site).toEqual({ windCode: 'EN 1991-1-4', basicWindSpeedMs: 25 });
    expect(actions.setWindCode(en, 'ASCE 7-22').site).toEqual({ windCode: 'ASCE 7-22' });
    const asce = actions.setSite(before, { windCode: 'ASCE 7-16', basicWindSpeedMs: 50, exposure: 'B' });
    expect(actions.setWindCode(asce, 'ASCE 7-22').site).toEqual({
      windCode: 'ASCE 7-22',
      basicWindSpeedMs: 50,
      exposure: 'B',
    });
    expect('site' in actions.setSite(asce, undefined)).toBe(false);
    expect(actions.setSiteFields(before, { basicWindSpeedMs: 3 })).toBe(before);
  });

  it('add, change, rename and remove sections, kept by height', () => {
    let after = actions.addSection(before, { id: 's0', heightM: 0.1, outline: CIRCLE });
    expect(after.sections.map(({ id }) => id)).toEqual(['s0', 's1']);
    after = actions.setOutline(after, 's0', { kind: 'circle', diameterMm: 1200 });
    after = actions.setSectionFields(after, 's0', { barkMm: 22 });
    after = actions.renameSection(after, 's0', 'base');
    expect(after.sections[0]).toEqual({
      id: 'base',
      heightM: 0.1,
      barkMm: 22,
      outline: { kind: 'circle', diameterMm: 1200 },
      drillings: [],
    });
    expect(actions.removeSection(after, 's1').sections.map(({ id }) => id)).toEqual(['base']);
    expect(() => actions.renameSection(after, 'base', 's1')).toThrow(
      'there is a section called "s1" already',
    );
    expect(() => actions.removeSection(after, 'x')).toThrow('there is no section called "x"');
  });

  it('add, move, rename and remove drillings at sections and flares', () => {
    const ref = { sectionId: 's1', drillingId: 'd1' };
    let after = actions.moveDrilling(before, ref, { azimuthDeg: 200, offRadialDeg: -10 });
    expect(actions.drillingAt(after, ref)).toEqual({ id: 'd1', azimuthDeg: 200, offRadialDeg: -10 });
    after = actions.setDrillingFields(after, ref, { note: 'n', offRadialDeg: undefined });
    expect(actions.drillingAt(after, ref)).toEqual({ id: 'd1', azimuthDeg: 200, note: 'n' });
    after = actions.renameDrilling(after, { flareId: 'f1', drillingId: 'd2' }, 'x');
    expect(after.flares[0]?.drillings[0]?.id).toBe('x');
    after = actions.removeDrilling(after, { flareId: 'f1', drillingId: 'x' });
    expect(after.flares[0]?.drillings).toEqual([]);
    expect(() => actions.addDrilling(before, { sectionId: 's1' }, { id: 'd1', azimuthDeg: 0 })).toThrow(
      'there is a drilling called "d1" already: choose another name',
    );
    expect(() => actions.addDrilling(before, { sectionId: 's1' }, { id: ' ', azimuthDeg: 0 })).toThrow(
      'needs a name',
    );
    expect(() => actions.drillingAt(before, { flareId: 'f1', drillingId: 'd9' })).toThrow(
      'there is no drilling',
    );
    expect(() => actions.moveDrilling(before, { sectionId: 's1', drillingId: 'd9' }, {})).toThrow(
      'there is no drilling',
    );
  });

  it('add, change, rename and remove flares, kept by azimuth', () => {
    let after = actions.addFlare(before, { id: 'f0', azimuthDeg: 5 });
    expect(after.flares.map(({ id }) => id)).toEqual(['f0', 'f1']);
    after = actions.renameFlare(actions.setFlareFields(after, 'f0', { heightMm: 200 }), 'f0', 'north');
    expect(after.flares[0]).toEqual({ id: 'north', azimuthDeg: 5, heightMm: 200, drillings: [] });
    expect(actions.removeFlare(after, 'north')).toEqual(before);
  });

  it('add, change and remove signs and targets', () => {
    let after = actions.addSign(before, { kind: 'ants' });
    after = actions.setSignFields(after, 0, { where: 'f1' });
    after = actions.addTarget(after, { what: 'path' });
    after = actions.setTargetFields(after, 0, { distanceM: 4 });
    expect([after.signs, after.targets]).toEqual([
      [{ kind: 'ants', where: 'f1' }],
      [{ what: 'path', distanceM: 4 }],
    ]);
    expect(actions.removeTarget(actions.removeSign(after, 0), 0)).toEqual(before);
    expect(() => actions.removeSign(before, 0)).toThrow('there is no sign number 1');
    expect(() => actions.setTargetFields(before, 2, {})).toThrow('there is no target number 3');
  });

  it('leave what they do not touch shared and unchanged', () => {
    const after = actions.setTreeField(before, 'heightM', 21);
    expect(after.sections).toBe(before.sections);
    expect(before.tree).toEqual({});
  });

  it('offer the next free name', () => {
    expect(actions.nextId(before, 'section')).toBe('s2');
    expect(actions.nextId(before, 'flare')).toBe('f2');
    expect(actions.nextId(before, 'drilling')).toBe('d3');
    expect(actions.nextId(actions.newCase(), 'drilling')).toBe('d1');
  });

  it('put a trace into the bag under a name of its own and never over another', () => {
    const trace = { depthMm: new Float64Array([0, 0.1]), resistancePct: new Float64Array([1, 2]) };
    const ref = { sectionId: 's1', drillingId: 'd1' };
    const first = actions.attachTrace(before, new Map(), ref, trace, ['one']);
    const second = actions.attachTrace(first.caseFile, first.bag, ref, trace);
    expect([first.path, second.path]).toEqual(['traces/d1.csv', 'traces/d1-2.csv']);
    expect(actions.drillingAt(second.caseFile, ref).trace).toBe('traces/d1-2.csv');
    expect([...second.bag.keys()]).toEqual(['traces/d1.csv', 'traces/d1-2.csv']);
    expect(readTraceTable(second.bag.get('traces/d1-2.csv')!, 'x')).toEqual(trace);
  });

  it('make a safe file name of any drilling name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (name) => {
        const path = actions.freeTracePath(new Map(), name);
        const bag = new Map([[path, new Uint8Array([1])]]);
        expect([...bagFromZip(zipOfBag(bag)).keys()]).toEqual([path]);
      }),
      { numRuns: 100 },
    );
  });
});
