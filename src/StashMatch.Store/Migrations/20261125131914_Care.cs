using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace StashMatch.Store.Migrations
{
    /// <inheritdoc />
    public partial class Care : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Care",
                table: "Leftovers",
                type: "TEXT",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Care",
                table: "Leftovers");
        }
    }
}
