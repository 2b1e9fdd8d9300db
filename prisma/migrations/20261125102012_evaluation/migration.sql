-- CreateTable
CREATE TABLE "Evaluation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL,
    "document" TEXT NOT NULL,
    "recordCount" INTEGER NOT NULL
);

-- CreateIndex
CREATE INDEX "Evaluation_at_idx" ON "Evaluation"("at");
