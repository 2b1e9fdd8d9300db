-- CreateTable
CREATE TABLE "LogEntry" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "month" TEXT NOT NULL,
    "time" TEXT,
    "kind" TEXT NOT NULL,
    "subjectKind" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "actor" TEXT,
    "detail" TEXT NOT NULL,
    "prevHash" TEXT NOT NULL,
    "hash" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "PersonKey" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "caseId" TEXT NOT NULL DEFAULT '',
    "key" TEXT,
    CONSTRAINT "PersonKey_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SubjectKey" (
    "kind" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "commitment" TEXT NOT NULL,

    PRIMARY KEY ("kind", "subjectId")
);

-- CreateTable
CREATE TABLE "DestroyedKey" (
    "id" TEXT NOT NULL PRIMARY KEY
);

-- CreateIndex
CREATE UNIQUE INDEX "LogEntry_prevHash_key" ON "LogEntry"("prevHash");

-- CreateIndex
CREATE UNIQUE INDEX "LogEntry_hash_key" ON "LogEntry"("hash");

-- CreateIndex
CREATE INDEX "LogEntry_month_kind_hash_idx" ON "LogEntry"("month", "kind", "hash");

-- CreateIndex
CREATE INDEX "LogEntry_subject_idx" ON "LogEntry"("subject");

-- CreateIndex
CREATE UNIQUE INDEX "PersonKey_userId_caseId_key" ON "PersonKey"("userId", "caseId");

-- CreateIndex
CREATE UNIQUE INDEX "SubjectKey_commitment_key" ON "SubjectKey"("commitment");

-- The log can only grow at its end. Whoever can drop these triggers can still write: the chain of hashes then shows it.
CREATE TRIGGER "LogEntry_grows_at_its_end" BEFORE INSERT ON "LogEntry"
WHEN NEW."seq" IS NOT (SELECT COALESCE(MAX("seq"), 0) + 1 FROM "LogEntry")
  OR NEW."prevHash" IS NOT COALESCE((SELECT "hash" FROM "LogEntry" ORDER BY "seq" DESC LIMIT 1), '0000000000000000000000000000000000000000000000000000000000000000')
BEGIN
  SELECT RAISE(ABORT, 'An entry of the log must follow the newest one.');
END;

CREATE TRIGGER "LogEntry_is_never_changed" BEFORE UPDATE ON "LogEntry"
BEGIN
  SELECT RAISE(ABORT, 'The log is append-only: write a correction as a new entry.');
END;

CREATE TRIGGER "LogEntry_is_never_removed" BEFORE DELETE ON "LogEntry"
BEGIN
  SELECT RAISE(ABORT, 'The log is append-only: nothing is removed from it.');
END;

-- Keys of persons come and go with what they are for, whichever statement adds or removes it.
CREATE TRIGGER "User_gets_key" AFTER INSERT ON "User"
BEGIN
  INSERT OR IGNORE INTO "PersonKey" ("id", "userId", "caseId") VALUES (lower(hex(randomblob(16))), NEW."id", '');
END;

CREATE TRIGGER "PostedCase_gets_key" AFTER INSERT ON "PostedCase"
BEGIN
  INSERT OR IGNORE INTO "PersonKey" ("id", "userId", "caseId") VALUES (lower(hex(randomblob(16))), NEW."userId", NEW."caseId");
END;

CREATE TRIGGER "PostedCase_loses_key" AFTER DELETE ON "PostedCase"
BEGIN
  DELETE FROM "PersonKey" WHERE "userId" = OLD."userId" AND "caseId" = OLD."caseId";
END;

CREATE TRIGGER "PersonKey_is_remembered_as_destroyed" AFTER DELETE ON "PersonKey"
BEGIN
  INSERT OR IGNORE INTO "DestroyedKey" ("id") VALUES (OLD."id");
END;

INSERT INTO "PersonKey" ("id", "userId", "caseId") SELECT lower(hex(randomblob(16))), "id", '' FROM "User";
INSERT INTO "PersonKey" ("id", "userId", "caseId") SELECT lower(hex(randomblob(16))), "userId", "caseId" FROM "PostedCase";
