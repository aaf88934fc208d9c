namespace StashMatch.Questions;

/// <summary>What a field holds.</summary>
public enum FieldKind
{
    /// <summary>Words, or one of a few words.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A number.</summary>
    Number,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>Fields of its own.</summary>
    Fields,

    /// <summary>Anything at all, kept as it is.</summary>
    Anything,
}
