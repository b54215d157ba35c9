-- Papers as they were issued, each with what it was asked for; both are files, kept byte for byte.
CREATE TABLE paper (
  id TEXT NOT NULL PRIMARY KEY,
  project TEXT NOT NULL,
  number INTEGER NOT NULL,
  kind TEXT NOT NULL,
  media_type TEXT NOT NULL,
  version TEXT NOT NULL,
  issued TEXT NOT NULL,
  request INTEGER NOT NULL REFERENCES file (id),
  content INTEGER NOT NULL REFERENCES file (id),
  FOREIGN KEY (project, number) REFERENCES revision (project, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX paper_of_project ON paper (project);

CREATE TRIGGER paper_stays BEFORE UPDATE ON paper BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER paper_remains BEFORE DELETE ON paper BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
