/** The advice: options with their effects, the least pruning that would do, and when to look again. */
import type { AdviceAssessment, NextDrilling, Notice, SectionAssessment } from '../assessment.ts';
import type { CaseInput } from '../case.ts';
import type { MeasuredRate } from '../change/index.ts';
import type { Decided, SafetyResult } from '../decision/index.ts';
import type { Random } from '../random.ts';
import { adviceOptions } from '../reference/tables.generated.ts';
import { stratifiedUniforms } from '../wind/sampling.ts';
import type { WindDemand } from '../wind/types.ts';
import { defaultWanted, leastPruning, type Wanted } from './leastPruning.ts';
import type { Loads } from './loads.ts';
import { adviceOptionsFor } from './options.ts';
import type { Standing } from './pruning.ts';
import { reinspection } from './reinspection.ts';

export interface AdviseInput {
  input: CaseInput;
  decided: Decided;
  safety: SafetyResult;
  demand: WindDemand;
  sections: readonly SectionAssessment[];
  nextDrilling: NextDrilling;
  wanted?: Wanted;
  /** Speeds of fronts measured between this visit and an earlier one. */
  measured?: readonly MeasuredRate[];
}

/** Advice on an assessed tree. */
export function advise(
  given: AdviseInput,
  random: Random,
): { assessment: AdviceAssessment; notices: Notice[] } {
  const { input, decided, safety, demand, sections, nextDrilling } = given;
  const wanted = given.wanted ?? defaultWanted();
  const standing: Standing = {
    tree: input.tree,
    site: input.site,
    sectionHeightsM: input.sections.map((section) => section.heightM),
    demand,
  };
  const loads: Loads = {
    drawn: safety.drawn,
    safety: safety.assessment,
    sectionIds: input.sections.map((section) => section.id),
    uniforms: stratifiedUniforms(random.fork('pruning'), safety.drawn.draws),
  };
  const choices = input.advice ?? [];
  return {
    assessment: {
      options: adviceOptionsFor({
        decided,
        safety: safety.assessment,
        standing,
        loads,
        nextDrilling,
        site: input.site,
        rootCuts: input.rootCuts ?? [],
        rootSpace: input.rootSpace ?? [],
        choices,
        wanted,
      }),
      leastPruning: leastPruning(standing, loads, wanted),
      reinspection: reinspection({
        sections,
        signs: input.signs,
        readings: decided.assessment.signs,
        likelihood: decided.assessment.likelihoodOfFailure.taken,
        safety: safety.assessment,
        measured: given.measured,
      }),
    },
    notices: choices.flatMap((choice, i): Notice[] =>
      adviceOptions.some((row) => row.id === choice.option)
        ? []
        : [
            {
              severity: 'caution',
              where: `advice[${i}].option`,
              text: `"${choice.option}" is no option of the advice; use one of ${adviceOptions.map((row) => row.id).join(', ')}.`,
            },
          ],
    ),
  };
}
