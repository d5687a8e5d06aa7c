/** Words for what a member may do. */
import type { Role } from '#lib/access/caller.ts';

export const ROLE_WORDS: Readonly<Record<Role, { readonly name: string; readonly may: string }>> = {
  owner: {
    name: 'Owner',
    may: 'Owners do everything: lessons, publishing, members and settings.',
  },
  editor: {
    name: 'Editor',
    may: 'Editors make, publish and correct lessons.',
  },
  viewer: {
    name: 'Viewer',
    may: 'Viewers read drafts and play recordings; they change nothing.',
  },
};
