-- CreateTable
CREATE TABLE "VocabularyEdit" (
    "revision" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "month" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "undone" BOOLEAN NOT NULL DEFAULT false
);

-- CreateTable
CREATE TABLE "UnreadWord" (
    "word" TEXT NOT NULL,
    "month" TEXT NOT NULL,
    "count" INTEGER NOT NULL,

    PRIMARY KEY ("word", "month")
);

-- CreateIndex
CREATE INDEX "UnreadWord_month_idx" ON "UnreadWord"("month");
