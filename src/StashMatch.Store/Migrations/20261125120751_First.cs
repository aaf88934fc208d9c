using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace StashMatch.Store.Migrations
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "DoneOnce",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Result = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DoneOnce", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Hats",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PublicId = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Description = table.Column<string>(type: "TEXT", nullable: false),
                    SavedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Hats", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Leftovers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    PublicId = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", nullable: false),
                    Colour = table.Column<string>(type: "TEXT", nullable: true),
                    Fibre = table.Column<string>(type: "TEXT", nullable: false),
                    WeightClass = table.Column<int>(type: "INTEGER", nullable: true),
                    LabelMass = table.Column<string>(type: "TEXT", nullable: true),
                    LabelMassUnit = table.Column<int>(type: "INTEGER", nullable: false),
                    LabelLength = table.Column<string>(type: "TEXT", nullable: true),
                    LabelLengthUnit = table.Column<int>(type: "INTEGER", nullable: false),
                    RatioFrom = table.Column<int>(type: "INTEGER", nullable: false),
                    Superwash = table.Column<bool>(type: "INTEGER", nullable: false),
                    Make = table.Column<int>(type: "INTEGER", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: true),
                    KeptIn = table.Column<string>(type: "TEXT", nullable: true),
                    Note = table.Column<string>(type: "TEXT", nullable: true),
                    KeptBackFor = table.Column<string>(type: "TEXT", nullable: true),
                    NotForHats = table.Column<bool>(type: "INTEGER", nullable: false),
                    IsDemo = table.Column<bool>(type: "INTEGER", nullable: false),
                    LoggedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    KnittedUpAt = table.Column<long>(type: "INTEGER", nullable: true),
                    RemovedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Leftovers", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Marks",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Marks", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Weighings",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LeftoverId = table.Column<Guid>(type: "TEXT", nullable: false),
                    GrossMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    TareMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    StepMilligrams = table.Column<long>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false)
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
                name: "IX_DoneOnce_OwnerId_Key",
                table: "DoneOnce",
                columns: new[] { "OwnerId", "Key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Hats_OwnerId_PublicId",
                table: "Hats",
                columns: new[] { "OwnerId", "PublicId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Leftovers_OwnerId_LoggedAt",
                table: "Leftovers",
                columns: new[] { "OwnerId", "LoggedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Leftovers_OwnerId_PublicId",
                table: "Leftovers",
                columns: new[] { "OwnerId", "PublicId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Marks_OwnerId_Name",
                table: "Marks",
                columns: new[] { "OwnerId", "Name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Weighings_LeftoverId",
                table: "Weighings",
                column: "LeftoverId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "DoneOnce");

            migrationBuilder.DropTable(
                name: "Hats");

            migrationBuilder.DropTable(
                name: "Marks");

            migrationBuilder.DropTable(
                name: "Weighings");

            migrationBuilder.DropTable(
                name: "Leftovers");
        }
    }
}
