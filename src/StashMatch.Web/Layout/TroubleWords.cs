namespace StashMatch.Web.Layout;

/// <summary>What is said when the page has lost the program, when something broke, and on the pages for errors.</summary>
public static class TroubleWords
{
    public const string Description = "Weigh your leftover yarn, and see whether it makes a striped, braided hat.";

    // The page’s script says these when contact is lost and stays lost.
    public const string LostContact = "Lost contact with StashMatch. Trying again…; what you typed is kept.";
    public const string StillLost = "Still no contact, so buttons do nothing yet. Trying again every few seconds.";
    public const string Broke = "Something went wrong. What you saved is safe.";
    public const string LoadAgain = "Load the page again";

    // Error pages.
    public const string CanIMakeIt = "Can I make it?";
    public const string NotFoundTitle = "Page not found";
    public const string NotFoundHeading = "There is no page here";
    public const string NotFoundWhy = "The address may be mistyped.";
    public const string WeighOne = "Weigh a leftover";
    public const string SorryTitle = "Something went wrong";
    public const string SorryHeading = "Something went wrong here";
    public const string SorryWhy = "The fault is ours. What you saved is safe.";
    public const string StartAgain = "Start again";
}
