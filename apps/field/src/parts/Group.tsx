/** A group of fields or figures under one heading. */
import { type ReactNode, useId } from 'react';

interface GroupProps {
  title: string;
  lead?: ReactNode;
  tools?: ReactNode;
  children: ReactNode;
  className?: string;
  /** Name by which an address leads here (`useArrival`). */
  id?: string | undefined;
}

export function Group({ title, lead, tools, children, className, id: name }: GroupProps) {
  const id = useId();
  return (
    <section
      className={`group ${className ?? ''}`}
      aria-labelledby={id}
      id={name}
      tabIndex={name ? -1 : undefined}
    >
      <header className="group-head">
        <h2 id={id}>{title}</h2>
        {tools}
      </header>
      {lead && <p className="lead">{lead}</p>}
      {children}
    </section>
  );
}
