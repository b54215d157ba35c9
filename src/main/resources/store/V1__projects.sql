-- Files are kept as the bytes that were given, cut into pieces; a piece that several files share is there once, so that
-- a change of one hazard adds that hazard and not the line of the route.
CREATE TABLE piece (
  id INTEGER PRIMARY KEY,
  sha256 BLOB NOT NULL UNIQUE CHECK (length(sha256) = 32),
  content BLOB NOT NULL
) STRICT;

CREATE TABLE file (
  id INTEGER PRIMARY KEY,
  sha256 BLOB NOT NULL UNIQUE CHECK (length(sha256) = 32),
  bytes INTEGER NOT NULL
) STRICT;

CREATE TABLE file_piece (
  file INTEGER NOT NULL REFERENCES file (id),
  place INTEGER NOT NULL,
  piece INTEGER NOT NULL REFERENCES piece (id),
  PRIMARY KEY (file, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE project (
  id TEXT NOT NULL PRIMARY KEY,
  begun TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE revision (
  project TEXT NOT NULL REFERENCES project (id),
  number INTEGER NOT NULL CHECK (number > 0),
  name TEXT NOT NULL,
  author TEXT NOT NULL,
  saved TEXT NOT NULL,
  reason TEXT NOT NULL,
  view TEXT NOT NULL,
  PRIMARY KEY (project, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE revision_file (
  project TEXT NOT NULL,
  number INTEGER NOT NULL,
  place INTEGER NOT NULL,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  file INTEGER NOT NULL REFERENCES file (id),
  PRIMARY KEY (project, number, place),
  FOREIGN KEY (project, number) REFERENCES revision (project, number)
) STRICT, WITHOUT ROWID;

-- What was saved stays as it was saved.
CREATE TRIGGER piece_stays BEFORE UPDATE ON piece BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER piece_remains BEFORE DELETE ON piece BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER file_stays BEFORE UPDATE ON file BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER file_remains BEFORE DELETE ON file BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER file_piece_stays BEFORE UPDATE ON file_piece BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER file_piece_remains BEFORE DELETE ON file_piece BEGIN SELECT RAISE(ABORT, 'kept as given'); END;
CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN SELECT RAISE(ABORT, 'revisions are only added'); END;
CREATE TRIGGER revision_remains BEFORE DELETE ON revision BEGIN SELECT RAISE(ABORT, 'revisions are only added'); END;
CREATE TRIGGER revision_file_stays BEFORE UPDATE ON revision_file BEGIN SELECT RAISE(ABORT, 'revisions are only added'); END;
CREATE TRIGGER revision_file_remains BEFORE DELETE ON revision_file BEGIN SELECT RAISE(ABORT, 'revisions are only added'); END;
