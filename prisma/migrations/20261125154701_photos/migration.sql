-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "draftId" TEXT,
    "caseId" TEXT,
    "position" INTEGER NOT NULL,
    "altText" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    CONSTRAINT "Photo_draftId_fkey" FOREIGN KEY ("draftId") REFERENCES "Draft" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Photo_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Photo_draftId_idx" ON "Photo"("draftId");

-- CreateIndex
CREATE INDEX "Photo_caseId_idx" ON "Photo"("caseId");
