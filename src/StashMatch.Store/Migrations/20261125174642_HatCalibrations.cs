using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace StashMatch.Store.Migrations
{
    /// <inheritdoc />
    public partial class HatCalibrations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "HatId",
                table: "Calibrations",
                type: "TEXT",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "HatId",
                table: "Calibrations");
        }
    }
}
