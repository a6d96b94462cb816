/** Makes ready for a photo of a strip while somebody looks at a place where one may be taken. */
import { useEffect } from 'react';
import { practiseStrips } from '../work/stripWorker.ts';
import { useSessionView } from './useSession.tsx';

/** Once the case is assessed in full: nobody shall wait for the assessment because of it. */
export function useStripPractice(): void {
  const { working, quick } = useSessionView().result;
  const settled = !working && !quick;
  useEffect(() => {
    if (settled) practiseStrips();
  }, [settled]);
}
