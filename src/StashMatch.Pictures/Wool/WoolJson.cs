using System.Text.Json;

namespace StashMatch.Pictures;

/// <summary>A hat as the page's script takes it: short names, only what painting needs.</summary>
internal static class WoolJson
{
    public static string Of(WoolHat hat)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteBoolean("sideways", hat.Sideways);
            json.WriteBoolean("flat", hat.Flat);
            json.WriteNumber("around", hat.Around);
            json.WriteNumber("above", hat.Above);
            json.WriteNumber("stitches", hat.Stitches);
            json.WriteNumber("crownRows", hat.CrownRows);
            json.WriteNumber("gores", hat.Gores);
            if (hat.Brim is { } brim)
            {
                json.WriteStartObject("brim");
                json.WriteNumber("area", brim.Area);
                json.WriteNumber("depth", brim.Depth);
                json.WriteBoolean("folded", brim.Folded);
                json.WriteNumber("ribs", brim.Ribs);
                json.WriteNumber("wales", brim.Wales);
                json.WriteNumber("rounds", brim.Rounds);
                json.WriteBoolean("rounded", brim.Rounded);
                json.WriteBoolean("first", brim.First);
                json.WriteEndObject();
            }

            json.WriteStartArray("areas");
            foreach (var area in hat.Areas)
            {
                json.WriteStartObject();
                json.WriteString("name", area.Name);
                json.WriteString("fabric", area.Fabric.ToString());
                json.WriteNumber("rows", area.Rows);
                json.WriteNumber("yarn", area.Yarn);
                json.WriteNumber("second", area.Second);
                json.WriteNumber("knitted", area.Knitted);
                json.WriteString("code", area.Code);
                json.WriteString("words", area.Words);
                json.WriteStartArray("parts");
                foreach (var part in area.Parts)
                {
                    json.WriteStringValue(part);
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("yarns");
            foreach (var yarn in hat.Yarns)
            {
                json.WriteStartObject();
                json.WriteStartArray("colours");
                foreach (var colour in yarn.Colours)
                {
                    json.WriteStringValue(colour.Hex);
                }

                json.WriteEndArray();
                json.WriteNumber("halo", yarn.Halo);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
