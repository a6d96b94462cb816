import { describe, expect, it } from 'vitest';
import { doStep, historyOf, redo, stepNames, undo } from './history.ts';

describe('history', () => {
  it('undoes and redoes steps by name', () => {
    let history = doStep(doStep(historyOf('a'), 'b', 'to b'), 'c', 'to c');
    expect(stepNames(history)).toEqual({ undo: 'to c', redo: null });
    history = undo(history);
    expect(history.present).toBe('b');
    expect(stepNames(history)).toEqual({ undo: 'to b', redo: 'to c' });
    expect(undo(history).present).toBe('a');
    expect(redo(history).present).toBe('c');
    expect(redo(undo(undo(history))).present).toBe('b');
  });

  it('does nothing at either end, or for a step that changes nothing', () => {
    const history = historyOf('a');
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
    expect(doStep(history, 'a', 'nothing')).toBe(history);
  });

  it('joins typing in one field into one step', () => {
    let history = historyOf('');
    for (const text of ['O', 'Oa', 'Oak']) history = doStep(history, text, 'species', true);
    expect(undo(history).present).toBe('');
    history = doStep(history, 'Oak 2', 'label', true);
    expect(undo(history).present).toBe('Oak');
    // After an undo a new step is a step of its own.
    history = doStep(undo(history), 'Oaks', 'species', true);
    expect(undo(history).present).toBe('Oak');
  });

  it('lets go of what was undone when a new step is made', () => {
    const history = doStep(undo(doStep(historyOf(1), 2, 'two')), 3, 'three');
    expect(stepNames(history)).toEqual({ undo: 'three', redo: null });
    expect(redo(history)).toBe(history);
  });

  it('keeps the last 500 steps', () => {
    let history = historyOf(0);
    for (let i = 1; i <= 600; i++) history = doStep(history, i, `step ${i}`);
    for (let i = 0; i < 600; i++) history = undo(history);
    expect(history.present).toBe(100);
  });
});
