/** Words to look for, as a plain form: the page is asked again with them, so it needs no script. */
import styles from './search.module.css';

interface SearchFormProps {
  /** What is looked through: `all lessons`. */
  readonly where: string;
  readonly typed: string;
  /** The page without its search. */
  readonly page: string;
}

export const SearchForm = ({ where, typed, page }: SearchFormProps) => (
  <search>
    <form method="get" action={page} className={styles.form}>
      <label htmlFor="search-words">Search {where}</label>
      <div className={styles.line}>
        <input
          id="search-words"
          name="words"
          type="search"
          defaultValue={typed}
          maxLength={200}
          autoComplete="off"
          enterKeyHint="search"
        />
        <button type="submit" className="quiet">
          Search
        </button>
      </div>
    </form>
  </search>
);
