import { Component, type ReactNode } from 'react';
import { MessagesContext, useMessages } from './messages/messages.ts';
import { useIsKept } from './world.ts';

interface CaughtState {
  readonly at: string;
  readonly message: string | null;
}

/** Says so when something in the program went wrong, in place of a page that is blank, until another is turned to. */
export class Caught extends Component<{ readonly at: string; readonly children: ReactNode }, CaughtState> {
  override state: CaughtState = { at: this.props.at, message: null };

  static getDerivedStateFromError(error: unknown): Pick<CaughtState, 'message'> {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  static getDerivedStateFromProps({ at }: { readonly at: string }, state: CaughtState): CaughtState | null {
    return at === state.at ? null : { at, message: null };
  }

  override render(): ReactNode {
    const { message } = this.state;
    if (message === null) return this.props.children;
    return (
      <MessagesContext.Consumer>
        {({ general }) => (
          <div className="notice" role="alert">
            <h1>{general.failed}</h1>
            <p>{general.failedSays(message)}</p>
            <KeptAll />
            <button type="button" className="say" onClick={() => window.location.reload()}>
              {general.again}
            </button>
          </div>
        )}
      </MessagesContext.Consumer>
    );
  }
}

/** That nothing is lost by loading the page again, where that is so. */
function KeptAll(): ReactNode {
  const { general } = useMessages();
  return useIsKept() ? <p>{general.keptAll}</p> : null;
}
