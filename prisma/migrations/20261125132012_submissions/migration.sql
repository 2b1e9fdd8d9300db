-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "ownerId" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "caseId" TEXT,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Draft_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PostedCase" (
    "caseId" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    CONSTRAINT "PostedCase_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PostedCase_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseStatusChange" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "event" TEXT NOT NULL,
    "fromStatus" TEXT NOT NULL,
    "toStatus" TEXT NOT NULL,
    "month" TEXT NOT NULL,
    "reason" TEXT,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseStatusChange_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProposedWord" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "word" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "ProposedWord_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DetailMark" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "field" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "certainty" TEXT NOT NULL,
    "startOffset" INTEGER NOT NULL,
    "endOffset" INTEGER NOT NULL,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "DetailMark_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Draft_ownerId_idx" ON "Draft"("ownerId");

-- CreateIndex
CREATE INDEX "Draft_caseId_idx" ON "Draft"("caseId");

-- CreateIndex
CREATE INDEX "PostedCase_userId_idx" ON "PostedCase"("userId");
