/** Safety against breaking by direction, then and now, on one compass rose. */
import type { SafetyAssessment } from '@standfast/engine';
import type { Scene } from '../../scene/scene.ts';
import { textWidth } from '../../scene/textWidth.ts';
import { language } from '../../words/spoken.ts';
import type { FigureOptions, RoseMap } from '../options.ts';
import { drawRose, type RoseSeries, roseLegend } from '../rose/drawRose.ts';
import { clearAzimuth, limitCircles, roseExtras, safetyScale } from '../rose/rose.ts';

export function changeRose(then: SafetyAssessment, now: SafetyAssessment, options: FigureOptions): Scene {
  const { width, textSize: size = 9 } = options;
  const words = language().report.change.figures;
  const series: RoseSeries[] = [
    { ref: 'then', name: words.safetyThen, values: then.breakage, style: 'hatched' },
    { ref: 'now', name: words.safetyNow, values: now.breakage, style: 'plain' },
  ];
  const { domain, circles } = safetyScale({ ...now, uprooting: then.breakage });
  const limits = limitCircles();
  const map: RoseMap = {
    centre: [width / 2, width / 2],
    radius: { domain, range: [width * 0.06, width / 2 - 14 - size * 1.6], logarithmic: true },
  };
  const legend = roseLegend(series, 4, width + 8, width - 8, size, roseExtras(limits), (l) =>
    textWidth(l, size),
  );
  return {
    width,
    height: width + 12 + legend.height,
    title: words.safety,
    description: `${words.safety}.`,
    items: [
      ...drawRose(series, { map, circles, limits, size, labelsDeg: clearAzimuth(series) }),
      ...legend.items,
    ],
  };
}
