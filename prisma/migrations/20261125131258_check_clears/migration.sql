-- CreateTable
CREATE TABLE "CheckClears" (
    "checkSlug" TEXT NOT NULL,
    "roleSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    PRIMARY KEY ("checkSlug", "roleSlug"),
    CONSTRAINT "CheckClears_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "Check" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CheckClears_roleSlug_fkey" FOREIGN KEY ("roleSlug") REFERENCES "Role" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "CheckClears_roleSlug_idx" ON "CheckClears"("roleSlug");
