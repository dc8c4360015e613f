import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { useMessages } from './messages/messages.ts';
import { goTo } from './route.ts';

/** Files that were let go over the page, until the shelf has opened them. */
interface Dropped {
  readonly files: readonly File[];
  /** They are being opened. */
  readonly taken: () => void;
}

const DroppedContext = createContext<Dropped>({ files: [], taken: () => {} });

/** What was dropped on the page and is to be opened now. */
export function useDropped(): Dropped {
  return useContext(DroppedContext);
}

/** Takes files that are dropped anywhere on the page, and turns to the shelf, which opens them. */
export function DropProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const { shelf } = useMessages();
  const [isHeld, setHeld] = useState(false);
  const [files, setFiles] = useState<readonly File[]>([]);
  useEffect(() => {
    const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const over = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setHeld(true);
    };
    const left = (event: DragEvent) => {
      if (event.relatedTarget === null) setHeld(false);
    };
    const dropped = (event: DragEvent) => {
      setHeld(false);
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setFiles([...(event.dataTransfer?.files ?? [])]);
      goTo({ screen: 'shelf' });
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', left);
    window.addEventListener('drop', dropped);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', left);
      window.removeEventListener('drop', dropped);
    };
  }, []);
  const taken = useCallback(() => setFiles([]), []);
  const value = useMemo(() => ({ files, taken }), [files, taken]);
  return (
    <DroppedContext value={value}>
      {children}
      {isHeld ? <p className="held">{shelf.files.drop}</p> : null}
    </DroppedContext>
  );
}
