using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;

namespace SwingStudy.Storage.Identities;

/// <summary>AES-256-GCM with a random nonce: nonce, tag, ciphertext in one array. What is sealed for one purpose cannot be opened for another.</summary>
internal static class Cipher
{
    private const int NonceBytes = 12;
    private const int TagBytes = 16;

    /// <summary>Seals bytes.</summary>
    /// <param name="key">32 bytes.</param>
    /// <param name="purpose">What they are and whose; must be given again to open them.</param>
    /// <param name="plain">The bytes.</param>
    internal static byte[] Seal(byte[] key, string purpose, byte[] plain)
    {
        var sealedBytes = new byte[NonceBytes + TagBytes + plain.Length];
        var nonce = sealedBytes.AsSpan(0, NonceBytes);
        RandomNumberGenerator.Fill(nonce);
        using var aes = new AesGcm(key, TagBytes);
        aes.Encrypt(nonce, plain, sealedBytes.AsSpan(NonceBytes + TagBytes), sealedBytes.AsSpan(NonceBytes, TagBytes), Encoding.UTF8.GetBytes(purpose));
        return sealedBytes;
    }

    /// <summary>Opens what was sealed.</summary>
    /// <returns>False when key or purpose are others, or the bytes were changed: it cannot be told which.</returns>
    internal static bool TryOpen(byte[] key, string purpose, byte[] sealedBytes, [NotNullWhen(true)] out byte[]? plain)
    {
        plain = null;
        if (sealedBytes.Length < NonceBytes + TagBytes)
            return false;
        var opened = new byte[sealedBytes.Length - NonceBytes - TagBytes];
        using var aes = new AesGcm(key, TagBytes);
        try
        {
            aes.Decrypt(sealedBytes.AsSpan(0, NonceBytes), sealedBytes.AsSpan(NonceBytes + TagBytes), sealedBytes.AsSpan(NonceBytes, TagBytes), opened, Encoding.UTF8.GetBytes(purpose));
        }
        catch (AuthenticationTagMismatchException)
        {
            return false;
        }

        plain = opened;
        return true;
    }
}
