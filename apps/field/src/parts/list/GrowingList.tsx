/** A list drawn as far as a person has come: one of thousands opens as fast as one of ten. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';

const AT_A_TIME = 60;

interface GrowingListProps<Item> {
  className: string;
  items: readonly Item[];
  children: (item: Item) => ReactNode;
}

export function GrowingList<Item>({ className, items, children }: GrowingListProps<Item>) {
  const [count, setCount] = useState(AT_A_TIME);
  const end = useRef<HTMLDivElement>(null);
  const left = items.length - count;
  useEffect(() => {
    const element = end.current;
    if (!element || left <= 0) return;
    const watching = new IntersectionObserver(
      ([seen]) => {
        if (seen?.isIntersecting) setCount(count + AT_A_TIME);
      },
      { rootMargin: '600px' },
    );
    watching.observe(element);
    return () => watching.disconnect();
  }, [count, left]);
  return (
    <>
      <ul className={className}>{items.slice(0, count).map(children)}</ul>
      {left > 0 && (
        <div ref={end} className="list-end">
          <Button className="button" onPress={() => setCount(count + AT_A_TIME)}>
            Show more ({left} left)
          </Button>
        </div>
      )}
    </>
  );
}
