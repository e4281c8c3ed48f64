CREATE TABLE "exercises" (
	"id" text PRIMARY KEY NOT NULL,
	"instructor_id" text NOT NULL,
	"title" text NOT NULL,
	"content" jsonb NOT NULL,
	"made" timestamp with time zone NOT NULL
);
--> statement-breakpoint
ALTER TABLE "instructors" ADD COLUMN "keeper" boolean DEFAULT false NOT NULL;--> statement-breakpoint
UPDATE "instructors" SET "keeper" = true WHERE "made" = (SELECT min("made") FROM "instructors");--> statement-breakpoint
ALTER TABLE "exercises" ADD CONSTRAINT "exercises_instructor_id_instructors_id_fk" FOREIGN KEY ("instructor_id") REFERENCES "public"."instructors"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "exercises_instructor" ON "exercises" USING btree ("instructor_id");