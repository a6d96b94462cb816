/** The way from a finished visit to the next one. */
import { CalendarPlus } from 'lucide-react';
import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import { faultText, today } from '../state/bringIn.ts';
import { complain } from '../state/toast.tsx';
import { useSession, useSessionView } from '../state/useSession.tsx';
import { startNextVisit } from '../storage/nextVisit.ts';
import { Group } from './Group.tsx';

export function NextVisit() {
  const session = useSession();
  const { record, result } = useSessionView();
  const [, navigate] = useLocation();
  if (!record) return null;
  const months = result.assessment?.advice.reinspection.months;
  const begin = async () => {
    try {
      await session.settled();
      const id = await startNextVisit(record, today());
      navigate(`/case/${id}/section`);
    } catch (thrown) {
      complain(faultText(thrown, 'The next visit'));
    }
  };
  return (
    <Group
      title="Next visit"
      lead={`A new case that holds this one as the earlier visit. Tree, site, sections, targets and signs come along to be looked at again; the drillings come along without their traces, to be repeated.${months === undefined ? '' : ` Advised in ${months} months.`}`}
    >
      <Button className="button" onPress={begin}>
        <CalendarPlus aria-hidden /> Start the next visit
      </Button>
    </Group>
  );
}
