/** How the window speaks with the local server when it runs in a browser instead of its own shell. */

/** Every request to `PROJECT_ROUTE` carries the key that the server put in the address it printed. */
export const KEY_HEADER = 'x-hosewright-key';

/** `#key=...` of the window's address: a fragment is never sent to a server nor written in its log. */
export const KEY_FRAGMENT = 'key';

/** `GET /project/given` and `/project/demo` answer a `ListedProject`; their files lie at `<route>/files/<path>`. */
export const PROJECT_ROUTE = '/project';

/** A project whose files are fetched one by one. */
export interface ListedProject {
  readonly label: string;
  readonly savesInPlace: boolean;
  readonly projectText: string;
  readonly paths: readonly string[];
}
