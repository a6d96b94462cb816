import { newCase } from '@standfast/casefile';
import { describe, expect, it } from 'vitest';
import { assignmentChoices, assignmentFault, drillingTaken, usualAssignment } from './assignment.ts';

const empty = newCase('2026-05-14');
const first = drillingTaken(empty, { to: 'new s1', azimuth: '90' });
const one = first.withFields({ trace: 'traces/d1.csv' });

describe('which needle pass a trace is of', () => {
  it('makes the first section and the drilling where there is none', () => {
    expect(first.ref).toBe('s1/d1');
    expect(one.sections.map(({ id }) => id)).toEqual(['s1']);
    expect(one.sections[0]?.drillings).toEqual([{ id: 'd1', azimuthDeg: 90, trace: 'traces/d1.csv' }]);
    expect(empty.sections).toEqual([]);
  });

  it('takes the drilling on screen before one of the same name, and sets its fields only', () => {
    const two = drillingTaken(one, { to: 'new s1', azimuth: '200' }).withFields({});
    expect(usualAssignment(two, 'D2', null).to).toBe('old s1/d2');
    expect(usualAssignment(two, 'D2', 's1/d1').to).toBe('old s1/d1');
    expect(usualAssignment(two, 'else', null).to).toBe('new s1');
    const taken = drillingTaken(two, { to: 'old s1/d2', azimuth: '' });
    expect(taken.withFields({ photo: 'photos/d2.jpg' }).sections[0]?.drillings[1]).toEqual({
      id: 'd2',
      azimuthDeg: 200,
      photo: 'photos/d2.jpg',
    });
  });

  it('asks for the side of a new drilling only', () => {
    expect(assignmentFault({ to: 'new s1', azimuth: '' })).toMatch(/which side/);
    expect(assignmentFault({ to: 'new s1', azimuth: '400' })).toMatch(/between/);
    expect(assignmentFault({ to: 'new s1', azimuth: '45' })).toBeNull();
    expect(assignmentFault({ to: 'old s1/d1', azimuth: '' })).toBeNull();
    expect(assignmentChoices(one).map(({ value }) => value)).toEqual(['new s1', 'old s1/d1']);
  });
});
