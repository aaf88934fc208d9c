namespace StashMatch.Knitting.Matching;

/// <summary>A figure worked out when it is first asked for. It follows from what stands beside it in a record, so two of them never tell records apart.</summary>
internal sealed class WhenAsked<T>(Func<T> of)
{
    private readonly Lazy<T> _value = new(of);

    public T Value => _value.Value;

    public override bool Equals(object? obj) => obj is WhenAsked<T>;

    public override int GetHashCode() => 0;
}
