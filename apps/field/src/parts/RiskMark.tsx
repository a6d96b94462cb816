/** A risk's own shape; its word stands beside it. */
import type { RiskFilter } from '../state/listView.ts';
import { RISK_SHAPES } from './riskShapes.ts';

export function RiskMark({ risk }: { risk: Exclude<RiskFilter, 'any'> }) {
  const { fill, stroke, paint } = RISK_SHAPES[risk];
  return (
    <svg className={`risk-mark ${paint}`} viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
      {fill && <path d={fill} fill="currentColor" />}
      {stroke && <path d={stroke} fill="none" stroke="currentColor" strokeWidth="2.4" />}
    </svg>
  );
}
