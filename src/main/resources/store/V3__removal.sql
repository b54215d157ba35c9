-- A project is removed at its latest revision, and is there again when another is saved on it. Nothing of it is deleted.
CREATE TABLE removal (
  project TEXT NOT NULL,
  number INTEGER NOT NULL,
  removed TEXT NOT NULL,
  author TEXT NOT NULL,
  PRIMARY KEY (project, number),
  FOREIGN KEY (project, number) REFERENCES revision (project, number)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER removal_stays BEFORE UPDATE ON removal BEGIN SELECT RAISE(ABORT, 'removals are only added'); END;
CREATE TRIGGER removal_remains BEFORE DELETE ON removal BEGIN SELECT RAISE(ABORT, 'removals are only added'); END;
