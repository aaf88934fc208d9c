using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace StashMatch.Store.Migrations
{
    /// <inheritdoc />
    public partial class Keeping : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "Crumb",
                table: "Leftovers",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "Ledger",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LeftoverId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    GrossMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    TareMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    StepMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    UsedMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    For = table.Column<string>(type: "TEXT", nullable: true),
                    Changes = table.Column<string>(type: "TEXT", nullable: true),
                    Undoes = table.Column<long>(type: "INTEGER", nullable: true),
                    At = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Ledger", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Ledger_Leftovers_LeftoverId",
                        column: x => x.LeftoverId,
                        principalTable: "Leftovers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Phones",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    PairedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    RevokedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Phones", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Plans",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    PublicId = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Hat = table.Column<string>(type: "TEXT", nullable: false),
                    Size = table.Column<string>(type: "TEXT", nullable: false),
                    Stripes = table.Column<int>(type: "INTEGER", nullable: false),
                    Arrangement = table.Column<string>(type: "TEXT", nullable: false),
                    Question = table.Column<string>(type: "TEXT", nullable: true),
                    Sheet = table.Column<string>(type: "TEXT", nullable: true),
                    Reserves = table.Column<bool>(type: "INTEGER", nullable: false),
                    SavedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    FinishedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Plans", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Settings",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FirstUnit = table.Column<int>(type: "INTEGER", nullable: false),
                    ScaleStepMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    AllowancePercent = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Promises",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PlanId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LeftoverId = table.Column<Guid>(type: "TEXT", nullable: true),
                    LeftoverName = table.Column<string>(type: "TEXT", nullable: false),
                    Part = table.Column<string>(type: "TEXT", nullable: false),
                    Millimetres = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Promises", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Promises_Leftovers_LeftoverId",
                        column: x => x.LeftoverId,
                        principalTable: "Leftovers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.SetNull);
                    table.ForeignKey(
                        name: "FK_Promises_Plans_PlanId",
                        column: x => x.PlanId,
                        principalTable: "Plans",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Ledger_LeftoverId",
                table: "Ledger",
                column: "LeftoverId");

            migrationBuilder.CreateIndex(
                name: "IX_Plans_OwnerId_Name",
                table: "Plans",
                columns: new[] { "OwnerId", "Name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Plans_OwnerId_PublicId",
                table: "Plans",
                columns: new[] { "OwnerId", "PublicId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Promises_LeftoverId",
                table: "Promises",
                column: "LeftoverId");

            migrationBuilder.CreateIndex(
                name: "IX_Promises_PlanId",
                table: "Promises",
                column: "PlanId");

            migrationBuilder.CreateIndex(
                name: "IX_Settings_OwnerId",
                table: "Settings",
                column: "OwnerId",
                unique: true);

            // Weighings become the ledger's first lines, ids and all; what was said of a leftover beside them follows, in the order it happened.
            migrationBuilder.Sql(
                """
                INSERT INTO "Ledger" ("Id", "OwnerId", "LeftoverId", "Kind", "GrossMilligrams", "TareMilligrams", "StepMilligrams", "UsedMilligrams", "At")
                SELECT "Id", "OwnerId", "LeftoverId", 0, "GrossMilligrams", "TareMilligrams", "StepMilligrams", 0, "At" FROM "Weighings" ORDER BY "Id";
                """);
            migrationBuilder.Sql(
                """
                INSERT INTO "Ledger" ("OwnerId", "LeftoverId", "Kind", "GrossMilligrams", "TareMilligrams", "StepMilligrams", "UsedMilligrams", "At")
                SELECT "OwnerId", "Id", 2, 0, 0, 0, 0, "KnittedUpAt" FROM "Leftovers" WHERE "KnittedUpAt" IS NOT NULL ORDER BY "KnittedUpAt";
                """);
            migrationBuilder.Sql(
                """
                INSERT INTO "Ledger" ("OwnerId", "LeftoverId", "Kind", "GrossMilligrams", "TareMilligrams", "StepMilligrams", "UsedMilligrams", "At")
                SELECT "OwnerId", "Id", 3, 0, 0, 0, 0, "RemovedAt" FROM "Leftovers" WHERE "RemovedAt" IS NOT NULL ORDER BY "RemovedAt";
                """);
            migrationBuilder.DropTable(
                name: "Weighings");

            // In plain SQL: the tool would rebuild the table, and no transaction spans that.
            migrationBuilder.Sql("""ALTER TABLE "Leftovers" DROP COLUMN "KnittedUpAt";""");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Ledger");

            migrationBuilder.DropTable(
                name: "Phones");

            migrationBuilder.DropTable(
                name: "Promises");

            migrationBuilder.DropTable(
                name: "Settings");

            migrationBuilder.DropTable(
                name: "Plans");

            migrationBuilder.DropColumn(
                name: "Crumb",
                table: "Leftovers");

            migrationBuilder.AddColumn<long>(
                name: "KnittedUpAt",
                table: "Leftovers",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Weighings",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    GrossMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    LeftoverId = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    StepMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    TareMilligrams = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Weighings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Weighings_Leftovers_LeftoverId",
                        column: x => x.LeftoverId,
                        principalTable: "Leftovers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Weighings_LeftoverId",
                table: "Weighings",
                column: "LeftoverId");
        }
    }
}
