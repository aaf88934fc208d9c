namespace StashMatch.Web.Phone;

/// <summary>What a phone is told until it is paired.</summary>
public static class PhoneWords
{
    public const string Title = "Pair this phone";
    public const string OnTheComputer = "On the computer, open Settings and press “Show a code”.";
    public const string TypeHere = "Then type its six digits here.";
    public const string Code = "the code";
    public const string CallIt = "call this phone";
    public const string NameHint = "kitchen phone";
    public const string PairIt = "Pair this phone";
    public const string NotEncrypted = "What is sent is not encrypted. Use it only on your own network, not on a shared one.";
    public const string PageTooOld = "This page was open too long. Type the code again.";
    public const string WrongCode = "That code is wrong, or no longer good. Show a new one on the computer and type it here.";
    public const string APhone = "a phone";
    public const string NotForThisBrowser = "This browser may not open this page.";
    public const string WrongAddress = "StashMatch does not answer at this address.";
}
