using CsCheck;
using StashMatch.Knitting.Colours;
using StashMatch.Knitting.Quantities;
using StashMatch.Knitting.Yarns;

namespace StashMatch.Store.Tests;

/// <summary>Bags of leftovers nobody would think of.</summary>
internal static class RandomBags
{
    private static readonly string[] Odd =
        ["=1+1", "'=x", "''-", "+44", "-5 %", "@here", "\t", " ", "'", "\"", "\"\"", "a,b", "a;b", "a\tb", "a\r\nb", "a\nb", "a\rb", "\r", "é ü ß", "毛糸", "🧶 moss", "﻿x", "1,5", "NULL", "＝1", " =x", "\v-", "#a", "x\"y,z"];

    private static readonly string[] Fibres = ["unknown", "100% wool", "80% merino, 20% nylon", "33.3% wool, 33.3% silk, 33.3% nylon", "55.55% alpaca, 44.45% cotton"];

    private static readonly string[] Cares = ["hand wash", "30 C mild, flat", "do not wash", "40 C normal, tumble 60", "unknown", "60 C very mild, line, no bleach"];

    private static readonly Gen<string?> Words = Gen.OneOf(
        Gen.Const((string?)null), Gen.Int[0, Odd.Length - 1].Select(i => Odd[i]).Select(s => (string?)s), Gen.String[Gen.Char, 1, 80].Where(IsText).Select(s => (string?)s));

    private static readonly Gen<string> Names = Gen.OneOf(Gen.Int[0, Odd.Length - 1].Select(i => Odd[i]), Gen.String[Gen.Char, 1, 80].Where(IsText)).Select(s => string.IsNullOrWhiteSpace(s) ? "Moss" : s);

    /// <summary>One leftover without an id.</summary>
    public static Gen<NewLeftover> Leftover { get; } = Gen.Select(
        Gen.Select(Gen.Int[2, 5_000_000], Gen.Double[0, 0.99], Gen.Int[1, 100_000], Gen.Bool),
        Gen.Select(Gen.Decimal[0.01m, 4_000m], Gen.Bool, Gen.Int[200, 900], Gen.Bool, Gen.Enum<RatioSource>(), Gen.Int[0, 5]),
        Gen.Select(Gen.Int[0, Fibres.Length - 1].Select(i => Fibres[i]), Gen.Int[-1, 7], Gen.Enum<YarnMake>(), Gen.Bool, Gen.Int[-0xFFFF, 0xFFFFFF], Gen.Int[0, Cares.Length - 1].Select(i => Cares[i]), Gen.Int[0, 7]),
        Gen.Select(Names, Words, Words, Words, Words, Words),
        Make);

    /// <summary>Half a surrogate pair is no text in any encoding, and a zero none a database keeps.</summary>
    public static bool IsText(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\0' || (char.IsSurrogate(text[i]) && !(char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[++i]))))
            {
                return false;
            }
        }

        return true;
    }

    private static NewLeftover Make(
        (int Gross, double Tare, int Step, bool KnittedUp) scale,
        (decimal Mass, bool Grams, int Times, bool Metres, RatioSource From, int None) label,
        (string Fibre, int Class, YarnMake Make, bool Flag, int Colour, string Care, int Flags) yarn,
        (string Name, string? Lot, string? Bag, string? KeptIn, string? KeptBackFor, string? Note) words)
    {
        var care = Care.TryParse(yarn.Care, out var washed, out _) ? washed : null;
        var length = label.Mass * label.Times / 100m;
        var (massUnit, lengthUnit) = (label.Grams ? MassUnit.Grams : MassUnit.Ounces, label.Metres ? LengthUnit.Metres : LengthUnit.Yards);
        return new NewLeftover(
            words.Name.Trim(),
            new Weighing(Grams.FromMilligrams(scale.Gross), Grams.FromMilligrams((long)(scale.Gross * scale.Tare)), Grams.FromMilligrams(scale.Step)),
            label.None == 0 || !LabelRatio.CanBe(label.Mass, massUnit, length, lengthUnit) ? null : new LabelRatio(label.Mass, massUnit, length, lengthUnit, label.From))
        {
            Class = yarn.Class < 0 ? null : (WeightClass)yarn.Class,
            Fibre = FibreBlend.TryParse(yarn.Fibre, out var fibre, out _) ? fibre : FibreBlend.Unknown,
            Make = yarn.Make,
            Superwash = yarn.Flag,
            Colour = yarn.Colour < 0 ? null : YarnColour.FromRgb((byte)(yarn.Colour >> 16), (byte)(yarn.Colour >> 8), (byte)yarn.Colour),
            Care = yarn.Flag ? care : null,
            Lot = words.Lot,
            Bag = words.Bag,
            KeptIn = words.KeptIn,
            KeptBackFor = words.KeptBackFor,
            Note = words.Note,
            NotForHats = (yarn.Flags & 1) == 1,
            Crumb = (yarn.Flags & 2) == 2,
            KnittedUp = scale.KnittedUp,
        };
    }
}
