import type { ReactNode } from 'react';

/** Text that is read out when it changes, and not shown: it stands on the page in another form already. */
export function Announced({ children }: { readonly children: ReactNode }): ReactNode {
  return (
    <p className="unseen" role="status" aria-live="polite">
      {children}
    </p>
  );
}
