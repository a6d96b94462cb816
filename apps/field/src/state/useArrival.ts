/** The last part of the address: `roots` of `/case/x/tree/roots`; null where the place has no part. */
import { useEffect } from 'react';
import { useLocation } from 'wouter';

export function usePart(): string | null {
  const [address] = useLocation();
  const part = address.split('/')[4];
  return part === undefined || part === '' ? null : decodeURIComponent(part);
}

/** Brings the group named by the address into view and gives it the focus. */
export function useArrival(): void {
  const part = usePart();
  useEffect(() => {
    if (part === null) return;
    const group = document.getElementById(part);
    group?.scrollIntoView();
    group?.focus({ preventScroll: true });
  }, [part]);
}
