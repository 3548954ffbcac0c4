namespace SwingStudy.Storage.Identities;

/// <summary>One spelling for one alias: composed accents, no outer blanks, single inner blanks, no case.</summary>
public static class AliasText
{
    /// <summary>The normalized form.</summary>
    public static string Normalize(string alias)
    {
        var words = Composition.Compose(alias).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        // Upper case first: it joins letters that differ only in their small forms, such as the two small sigmas.
        return Composition.Compose(string.Join(' ', words).ToUpperInvariant().ToLowerInvariant());
    }
}
