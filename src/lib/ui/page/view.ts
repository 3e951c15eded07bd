// Which view of a sheet is asked for, and the links that ask for another. The view lives in the
// address, so that it works without scripts, can be sent to somebody, and survives a reload.

/** What an address asks for, before the sheet is known. */
export interface ViewRequest {
  /** `?stage=upgrade`: id of the stage in focus. */
  readonly stage: string | null;
  /** `?of=upgrade`: whose numbers are shown while no stage is in focus. */
  readonly numbersOf: string | null;
  /** `?numbers=off`. */
  readonly hasNumbers: boolean;
}

export interface View {
  /** Index of the stage in focus, or null: all side by side. */
  readonly focus: number | null;
  /** Index of the stage whose numbers are shown. */
  readonly shown: number;
  readonly hasNumbers: boolean;
}

/** The request in the query of an address. */
export function viewRequestOf(query: URLSearchParams): ViewRequest {
  return {
    stage: query.get('stage'),
    numbersOf: query.get('of'),
    hasNumbers: query.get('numbers') !== 'off'
  };
}

/**
 * The view of a sheet with these stages. A stage that it does not have is passed over: the last one
 * is shown, as on opening.
 */
export function viewOf(request: ViewRequest, stageIds: readonly string[]): View {
  const indexOf = (id: string | null): number | null => {
    const index = id === null ? -1 : stageIds.indexOf(id);
    return index < 0 ? null : index;
  };
  const focus = indexOf(request.stage);
  return {
    focus,
    shown: focus ?? indexOf(request.numbersOf) ?? Math.max(0, stageIds.length - 1),
    hasNumbers: request.hasNumbers
  };
}

/** The address of a view, as a query alone: it stays on the same sheet. */
export function hrefOf(view: View, stageIds: readonly string[]): string {
  const query = new URLSearchParams();
  const id = stageIds[view.shown];
  if (id !== undefined && view.focus !== null) query.set('stage', id);
  else if (id !== undefined && view.shown !== stageIds.length - 1) query.set('of', id);
  if (!view.hasNumbers) query.set('numbers', 'off');
  const text = query.toString();
  // An empty query still has to clear the one that is there.
  return text === '' ? '?' : `?${text}`;
}

/** Most stage columns that fit side by side; with more, a window of five round the stage shown. */
const MOST_COLUMNS = 6;
const WINDOW = 5;

/** Indices of the stages that get a column. */
export function columnsOf(view: View, count: number): readonly number[] {
  const all = Array.from({ length: count }, (_, index) => index);
  if (count <= MOST_COLUMNS) return all;
  const first = Math.min(Math.max(0, view.shown - 2), count - WINDOW);
  return all.slice(first, first + WINDOW);
}
