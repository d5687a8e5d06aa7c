import styles from './terms.module.css';

interface WhatItIsProps {
  readonly term: string;
  /** Id of the box that explains it. */
  readonly box: string;
}

/** For a name that cannot hold a button itself: what its first term means. */
export const WhatItIs = ({ term, box }: WhatItIsProps) => (
  <button type="button" className={`${styles.term} ${styles.beside}`} popoverTarget={box} lang="en">
    what it is<span className="unseen">: {term}</span>
  </button>
);
